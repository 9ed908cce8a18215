/**
 * Reports, advice and signatures: from one injection to the next.
 *
 * <p>In: a course, a form, an actor. Out: facts, advice, views for pages and documents. Must not
 * know: databases, screens.
 */
@NullMarked
package rungwise.clinic.titration;

import org.jspecify.annotations.NullMarked;
