/**
 * An adversary: whole records made at random through the real use cases, and after each entry the
 * laws are asked. A weakened guard is found by it.
 */
@NullMarked
package rungwise.checks.adversary;

import org.jspecify.annotations.NullMarked;
