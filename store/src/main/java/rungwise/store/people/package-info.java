/**
 * Accounts in the journal, and their credentials beside it.
 *
 * <p>In: events and credentials. Out: the accounts as the last events left them. Must not know: who
 * may do what.
 */
@NullMarked
package rungwise.store.people;

import org.jspecify.annotations.NullMarked;
