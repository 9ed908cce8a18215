/**
 * Every short history under every sample protocol, against what never bends.
 *
 * <p>In: the sample protocols. Out: no history that breaks a rule. Must not know: how the engine
 * decides.
 */
@NullMarked
package rungwise.checks.histories;

import org.jspecify.annotations.NullMarked;
