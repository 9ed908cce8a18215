/**
 * The views in the journal.
 *
 * <p>In: who was shown or refused which page about which courses. Out: the views of a course. Must
 * not know: what a course says.
 */
@NullMarked
package rungwise.store.audit;

import org.jspecify.annotations.NullMarked;
