/**
 * Pages about the people who work here: first start, welcome, the list, one account.
 *
 * <p>In: forms of an administrator, or of somebody who holds a one-time code. Out: pages and
 * redirects. Must not know: how accounts are kept or passwords are hashed.
 */
@NullMarked
package rungwise.web.people;

import org.jspecify.annotations.NullMarked;
