/**
 * The rules that never bend, stated a second time.
 *
 * <p>In: who said what and when, in plain minutes and microlitres, and the answers of the engine's
 * public door. Out: which law was broken. Must not know: how the engine comes to its answers.
 */
@NullMarked
package rungwise.checks.adversary.law;

import org.jspecify.annotations.NullMarked;
