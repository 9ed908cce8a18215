/**
 * What is written when a course is brought to a stand, and when it goes on.
 *
 * <p>In and out: words of a fact. Must not know: courses, pages, who may write them.
 */
@NullMarked
package rungwise.clinic.life;

import org.jspecify.annotations.NullMarked;
