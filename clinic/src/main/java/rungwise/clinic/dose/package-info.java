/**
 * Answers "what is this much on that syringe?", for the page and for the command line alike.
 *
 * <p>In: a preparation, a syringe, and a volume, a line or a content. Out: a dose that can be
 * drawn, or why it cannot. Must not know: pages, options of a command, patients.
 */
@NullMarked
package rungwise.clinic.dose;

import org.jspecify.annotations.NullMarked;
