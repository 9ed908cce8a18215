/** Protocols as a clinic writes them, tried with the samples. */
@NullMarked
package rungwise.checks.protocols;

import org.jspecify.annotations.NullMarked;
