/**
 * Drawings to scale, as SVG text, each with words that say the same.
 *
 * <p>In: exact amounts and the words to be shown. Out: SVG without style or script, one code for
 * pages and documents. Must not know patients, preparations, screens, files or clocks.
 */
@NullMarked
package rungwise.drawing;

import org.jspecify.annotations.NullMarked;
