/**
 * What the verb "dose" is asked and what it answers.
 *
 * <p>In: words as they were typed. Out: a dose with its error budget as text or JSON, or every
 * fault. Must not know: patients, servers, any rule that the engine does not hold.
 */
@NullMarked
package rungwise.app.dose;

import org.jspecify.annotations.NullMarked;
