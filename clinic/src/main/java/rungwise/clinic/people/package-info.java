/**
 * Who works here: accounts, roles, first start, invitations, signing in.
 *
 * <p>In: what an administrator or a person signing in typed. Out: accounts, one-time codes, or
 * every fault. Must not know: how a password is hashed, how a session is kept.
 */
@NullMarked
package rungwise.clinic.people;

import org.jspecify.annotations.NullMarked;
