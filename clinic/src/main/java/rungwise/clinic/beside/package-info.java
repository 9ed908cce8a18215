/**
 * What a course reads of other places: what was told when he was taken over from elsewhere, and
 * what his other courses say.
 *
 * <p>In: entries of courses. Out: what the engine may look at beside a course's own injections.
 * Must not know: forms, screens, SQL.
 */
@NullMarked
package rungwise.clinic.beside;

import org.jspecify.annotations.NullMarked;
