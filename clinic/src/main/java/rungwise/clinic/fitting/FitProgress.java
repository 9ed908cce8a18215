package rungwise.clinic.fitting;

/**
 * How far a fit is.
 *
 * @param doing what is being done
 * @param part how much of all is done, from 0 to 1
 */
public record FitProgress(String doing, double part) {}
