/**
 * Who is signed in, from where, since when; who has given a second proof in this shift.
 *
 * <p>In: requests, accounts. Out: the account of a request, the sessions that are open. Must not
 * know: which page is asked for, how somebody proved who he is.
 */
@NullMarked
package rungwise.web.session;

import org.jspecify.annotations.NullMarked;
