/**
 * What is known before any patient: groups, components, preparations, durations.
 *
 * <p>In: published facts and the clinic's own records. Out: exact contents and limits. Must not
 * know: patients.
 */
@NullMarked
package rungwise.dosing.known;

import org.jspecify.annotations.NullMarked;
