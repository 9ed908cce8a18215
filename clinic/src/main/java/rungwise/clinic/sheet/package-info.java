/**
 * A course in words, for pages and documents alike.
 *
 * <p>In: the state of a course. Out: view records. Must not know: markup, forms.
 */
@NullMarked
package rungwise.clinic.sheet;

import org.jspecify.annotations.NullMarked;
