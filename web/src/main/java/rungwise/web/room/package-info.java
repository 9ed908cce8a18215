/**
 * Pages of the clinic room: one man's injection from the needle until he is soft, and the board.
 *
 * <p>In: typed times and what was seen. Out: pages that answer: who is to be looked at now, may he
 * inject now. Must not know: how either is decided.
 */
@NullMarked
package rungwise.web.room;

import org.jspecify.annotations.NullMarked;
