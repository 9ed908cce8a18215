/**
 * Passwords and codes: how they are hashed, and how often they may be tried.
 *
 * <p>In: secrets, addresses and names as typed. Out: hashes, and how long to wait. Must not know:
 * accounts, pages, or whether a name exists.
 */
@NullMarked
package rungwise.web.secrets;

import org.jspecify.annotations.NullMarked;
