/**
 * Tablets for erections beside the injections.
 *
 * <p>In: forms of the course page and of a visit. Out: entries. Must not know: what they hold back.
 */
@NullMarked
package rungwise.web.tablet;

import org.jspecify.annotations.NullMarked;
