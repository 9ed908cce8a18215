package rungwise.dosing.fit;

/** How far a fit is. */
public sealed interface Pass {

  /**
   * One more look at the courses is done.
   *
   * @param courses how many it looked at; a search begins with a part of them
   * @param number from 1 on
   * @param log the logarithm of the probability of these courses
   */
  record Look(int courses, int number, double log) implements Pass {}

  /**
   * Some more draws from the posterior are made.
   *
   * @param draws how many there are now
   * @param atLeast how many there will be, or more if these are worth too few independent ones
   */
  record Drawn(int draws, int atLeast) implements Pass {}
}
