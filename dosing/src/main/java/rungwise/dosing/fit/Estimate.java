package rungwise.dosing.fit;

import java.util.OptionalDouble;

/**
 * A parameter as it was fitted.
 *
 * @param value on its natural scale
 * @param error its standard error, from the curvature at the top; nothing for a parameter at an end
 *     of its range, or where the curvature is not that of a top
 */
public record Estimate(double value, OptionalDouble error) {}
