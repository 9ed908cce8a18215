/**
 * The program's start: one command line, and the wiring of everything behind it.
 *
 * <p>In: arguments. Out: an exit status: 0 done, 1 fault, 2 wrong use or bad input, 3 done with
 * doubts. Must not know: any rule about doses or people. Verbs that need no server load none of it.
 */
@NullMarked
package rungwise.app;

import org.jspecify.annotations.NullMarked;
