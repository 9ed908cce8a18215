/**
 * Who may open which page, and who has: routes and roles, signing in and out, sessions, refusals,
 * the record of views.
 *
 * <p>In: requests and the people use cases. Out: a request let through as an account, or refused.
 * Must not know: what any page behind the door shows.
 */
@NullMarked
package rungwise.web.access;

import org.jspecify.annotations.NullMarked;
