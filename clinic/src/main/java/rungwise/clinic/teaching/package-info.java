/**
 * What must be on record before a man injects at home.
 *
 * <p>In: typed records. Out: facts of the course. Must not know: how it is shown.
 */
@NullMarked
package rungwise.clinic.teaching;

import org.jspecify.annotations.NullMarked;
