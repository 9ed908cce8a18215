/**
 * An adversary: whole records made at random through the real use cases, and after each entry the
 * rules that never bend, stated a second time in plain minutes and microlitres. It shares nothing
 * with the engine but its public door and the values that are needed to ask.
 */
@NullMarked
package rungwise.checks.adversary;

import org.jspecify.annotations.NullMarked;
