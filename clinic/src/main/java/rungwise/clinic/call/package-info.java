/**
 * The call about an erection that does not go down.
 *
 * <p>In: when it began, as far as anybody says. Out: what has to be done now. Must not know: how a
 * report is folded; what is said of a man reaches the engine by his report alone.
 */
@NullMarked
package rungwise.clinic.call;

import org.jspecify.annotations.NullMarked;
