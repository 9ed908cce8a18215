/**
 * The one reader before every form: texts with characters that nobody can see go no further.
 *
 * <p>In: the fields of a form as they were sent. Out: a page that shows them without those
 * characters, to be sent on. Must not know: what a field means.
 */
@NullMarked
package rungwise.web.text;

import org.jspecify.annotations.NullMarked;
