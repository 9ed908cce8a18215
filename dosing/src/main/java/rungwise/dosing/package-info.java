/**
 * The one public door from a man's history to advice about his next dose.
 *
 * <p>In: a question that holds everything the answer may depend on. Out: advice with every reason,
 * or a clearance to inject now. Must not know: clocks, files, networks, databases, screens,
 * randomness.
 */
@NullMarked
package rungwise.dosing;

import org.jspecify.annotations.NullMarked;
