/**
 * The second proof of who somebody is: codes of an authenticator app, recovery codes, passkeys.
 *
 * <p>In: what an account typed, or a passkey that answered. Out: whether that proves it, and what
 * is set up. Must not know: how a secret is stored, what is asked of a browser.
 */
@NullMarked
package rungwise.clinic.factor;

import org.jspecify.annotations.NullMarked;
