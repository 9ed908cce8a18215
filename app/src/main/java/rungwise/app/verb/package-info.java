/**
 * The verbs of the command line, one class each.
 *
 * <p>In: arguments. Out: a result on standard output, everything else on standard error. Must not
 * know: how a server is wired; a verb that needs none names no class that does.
 */
@NullMarked
package rungwise.app.verb;

import org.jspecify.annotations.NullMarked;
