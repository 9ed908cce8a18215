package rungwise.dosing.response;

/**
 * Between what a forecast lies because a man's requirement is not known exactly. Every probability
 * falls when the requirement rises, so both ends belong to one requirement each.
 *
 * @param low one in twenty such men would have less
 * @param high one in twenty such men would have more
 */
public record ForecastRange(Forecast low, Forecast high) {}
