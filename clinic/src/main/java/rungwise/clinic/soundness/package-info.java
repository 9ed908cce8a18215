/**
 * Whether the record is as it was written, and what is said and done where it is not.
 *
 * <p>In: what the store found of its seals. Out: flaws, in numbers of entries and words. Must not
 * know: how a seal is made, what a course is.
 */
@NullMarked
package rungwise.clinic.soundness;

import org.jspecify.annotations.NullMarked;
