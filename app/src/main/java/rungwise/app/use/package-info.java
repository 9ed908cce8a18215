/**
 * What goes wrong because of what somebody gave the program.
 *
 * <p>In: what was given. Out: a sentence for the person who gave it. Must not know: servers, verbs.
 */
@NullMarked
package rungwise.app.use;

import org.jspecify.annotations.NullMarked;
