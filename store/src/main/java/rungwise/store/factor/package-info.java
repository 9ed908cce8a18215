/**
 * What proves an account a second time: encrypted secrets, hashes and public keys beside the
 * journal, and the events in it.
 *
 * <p>In: secrets and events. Out: the same again. Must not know: what a code is made of.
 */
@NullMarked
package rungwise.store.factor;

import org.jspecify.annotations.NullMarked;
