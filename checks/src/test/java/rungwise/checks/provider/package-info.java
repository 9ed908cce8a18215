/**
 * A real identity provider, as a clinic has one, to sign in with.
 *
 * <p>In: the address of a server. Out: people that the provider knows. Must not know: anything of
 * the product but its address.
 */
@NullMarked
package rungwise.checks.provider;

import org.jspecify.annotations.NullMarked;
