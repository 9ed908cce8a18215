/**
 * What the verb "fit" is asked and what it answers.
 *
 * <p>In: words as they were typed. Out: the parameters that fit the courses of a file, with every
 * doubt, as text or JSON, or every fault. Must not know: servers, who signs a population.
 */
@NullMarked
package rungwise.app.fit;

import org.jspecify.annotations.NullMarked;
