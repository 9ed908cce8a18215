/**
 * What the clinic keeps for calls about a long erection: its signed protocol, the emergency
 * departments around it, and who printed it.
 *
 * <p>In: what a prescriber, a lead or an administrator writes. Out: the version in force. Must not
 * know: any man, and the instruction of 4 hours, which no protocol changes.
 */
@NullMarked
package rungwise.clinic.callbook;

import org.jspecify.annotations.NullMarked;
