/**
 * The one reader before every form: neither a text with characters that nobody can see nor a form
 * that is too large goes further.
 *
 * <p>In: the fields of a form as they were sent. Out: a page that shows them, to be sent on. Must
 * not know: what a field means.
 */
@NullMarked
package rungwise.web.text;

import org.jspecify.annotations.NullMarked;
