/**
 * The page of what must be on record before a man injects at home.
 *
 * <p>In: forms. Out: facts of the course, or the page again with every fault. Must not know: what a
 * preparation asks for.
 */
@NullMarked
package rungwise.web.teaching;

import org.jspecify.annotations.NullMarked;
