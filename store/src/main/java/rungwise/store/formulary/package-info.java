/**
 * Preparations, each version of them, and syringes, in the journal.
 *
 * <p>In: versions and changes. Out: what the clinic keeps now, and any earlier version. Must not
 * know: who may change what.
 */
@NullMarked
package rungwise.store.formulary;

import org.jspecify.annotations.NullMarked;
