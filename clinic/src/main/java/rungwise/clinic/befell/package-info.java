/**
 * What befalls a vial after it was handed out: warmth, places, its end, a judgement.
 *
 * <p>In and out: words of a fact. Must not know: courses, pages, who may write them.
 */
@NullMarked
package rungwise.clinic.befell;

import org.jspecify.annotations.NullMarked;
