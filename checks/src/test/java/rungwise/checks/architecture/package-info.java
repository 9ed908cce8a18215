/**
 * Who may know whom, and what the pure side may touch.
 *
 * <p>In: the compiled classes of all modules. Out: a failure for each forbidden dependency. Must
 * not know: how the sources are written.
 */
@NullMarked
package rungwise.checks.architecture;

import org.jspecify.annotations.NullMarked;
