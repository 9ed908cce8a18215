/**
 * What the verb "forecast" is asked and what it answers.
 *
 * <p>In: words as they were typed. Out: probabilities for each patient of a file as text or JSON,
 * or every fault. Must not know: servers, any rule that the engine does not hold.
 */
@NullMarked
package rungwise.app.forecast;

import org.jspecify.annotations.NullMarked;
