/**
 * What was written of calls, rescues, reaching, tablets and the run of a course, as rows and back.
 *
 * <p>In: words of facts. Out: rows. Must not know: the entries to which they belong.
 */
@NullMarked
package rungwise.store.words;

import org.jspecify.annotations.NullMarked;
