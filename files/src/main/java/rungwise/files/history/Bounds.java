package rungwise.files.history;

/**
 * Between which numbers a number is accepted; the most is, too.
 *
 * @param isLeastAccepted whether the least itself is
 */
record Bounds(double least, boolean isLeastAccepted, double most) {

  boolean hold(double number) {
    return (isLeastAccepted ? number >= least : number > least) && number <= most;
  }
}
