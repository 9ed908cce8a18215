/**
 * Benchmarks: how long one step of the work takes.
 *
 * <p>In: the modules as they are built. Out: figures in bench/results. Nothing depends on it, and
 * it must not hold a rule or a check of its own.
 */
@NullMarked
package rungwise.bench;

import org.jspecify.annotations.NullMarked;
