/**
 * Takes over a man who injects already elsewhere: what he was told to inject there, and at what
 * part of it his schedule begins here.
 *
 * <p>In: forms. Out: entries of a course. Must not know: screens, how they are kept.
 */
@NullMarked
package rungwise.clinic.takeover;

import org.jspecify.annotations.NullMarked;
