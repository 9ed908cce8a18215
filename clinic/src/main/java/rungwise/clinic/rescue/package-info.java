/**
 * What is given and measured where a long erection is treated.
 *
 * <p>In and out: words of the log, as they stand in facts. Must not know: the call in which they
 * were written, and what may be given next.
 */
@NullMarked
package rungwise.clinic.rescue;

import org.jspecify.annotations.NullMarked;
