package rungwise.dosing.fit;

/**
 * How far a fit is: one more look at its courses is done.
 *
 * @param courses how many it looked at; a search begins with a part of them
 * @param number from 1 on
 * @param log the logarithm of the probability of these courses
 */
public record Pass(int courses, int number, double log) {}
