/**
 * Another machine's word for what time it is.
 *
 * <p>In: the address of a time source. Out: what it says, told to the watch. Must not know: what is
 * believed because of it.
 */
@NullMarked
package rungwise.app.clock;

import org.jspecify.annotations.NullMarked;
