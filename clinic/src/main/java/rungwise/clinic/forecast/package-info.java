/**
 * What the volumes of a course may do by a signed population, in words and numbers for a reader.
 *
 * <p>In: a course at an instant. Out: chances beside what the guards say of each volume. Must not
 * know: how a page shows it; it decides nothing.
 */
@NullMarked
package rungwise.clinic.forecast;

import org.jspecify.annotations.NullMarked;
