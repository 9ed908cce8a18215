/**
 * What of the record is not as it was written, and the way out.
 *
 * <p>In: courses with flaws, two people's word. Out: the page that says what can be done, step by
 * step. Must not know: how a seal is made, what an entry says of a man.
 */
@NullMarked
package rungwise.web.soundness;

import org.jspecify.annotations.NullMarked;
