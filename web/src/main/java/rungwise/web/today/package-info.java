/**
 * The day's list: who needs a clinician now.
 *
 * <p>In: who is signed in. Out: the page that answers that question first. Must not know: how
 * anything on it was decided.
 */
@NullMarked
package rungwise.web.today;

import org.jspecify.annotations.NullMarked;
