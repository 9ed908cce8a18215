/**
 * Reaching a man: his numbers and wishes are written down, and calls that did not reach him.
 *
 * <p>In: forms and courses. Out: entries, and words that say how he is called now. Must not know:
 * pages. No try to call him says anything about a dose, and none ends or calms an emergency.
 */
@NullMarked
package rungwise.clinic.reaching;

import org.jspecify.annotations.NullMarked;
