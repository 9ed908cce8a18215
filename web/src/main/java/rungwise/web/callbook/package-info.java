/**
 * The pages of what the clinic keeps for calls: its protocol, emergency departments, and the page
 * that is printed for when the server is down.
 *
 * <p>In: what is kept. Out: forms, lists and one printed page. Must not know: any man.
 */
@NullMarked
package rungwise.web.callbook;

import org.jspecify.annotations.NullMarked;
