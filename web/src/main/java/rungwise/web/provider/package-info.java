/**
 * Signing in with the clinic's own identity provider (OpenID Connect Core 1.0, authorization code
 * with PKCE).
 *
 * <p>In: what the provider says of a person. Out: a session of an account that was there before, or
 * a refusal. Must not know: roles, which a provider never gives.
 */
@NullMarked
package rungwise.web.provider;

import org.jspecify.annotations.NullMarked;
