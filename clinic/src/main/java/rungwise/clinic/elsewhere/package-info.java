/**
 * What a fact says of a man who is taken over from another clinic.
 *
 * <p>In and out: words. Must not know: courses, what the engine makes of it.
 */
@NullMarked
package rungwise.clinic.elsewhere;

import org.jspecify.annotations.NullMarked;
