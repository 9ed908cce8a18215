package rungwise.dosing.fit;

/** What speaks against using a fit. */
public sealed interface Doubt {

  /**
   * With fewer courses a fit is not offered for signing. An assumption: the standard error of omega
   * is then an eighth of omega, and 60 courses are the fewest that the fit was checked on.
   */
  int LEAST_COURSES = 60;

  /** The fewest courses of one group: an assumption too. */
  int LEAST_OF_GROUP = 10;

  /**
   * Too few courses to trust anything.
   *
   * @param courses how many there are
   */
  record FewCourses(int courses) implements Doubt {}

  /**
   * A group of so few courses that its gamma means little.
   *
   * @param courses how many it has
   */
  record SmallGroup(String group, int courses) implements Doubt {}

  /** In one group every response is usable, or none is, so its gamma has no end. */
  record SeparatedGroup(String group) implements Doubt {}

  /** A grade that never came, so that a threshold beside it has no end. */
  record MissingGrade(int grade) implements Doubt {}

  /** No duration at grade 3 or 4 is known: d0, d1 and tau are not fitted. */
  record NoDurations() implements Doubt {}

  /** A parameter that the search found at an end of its range. */
  record AtBound(String parameter) implements Doubt {}

  /** The curvature at the end of the search is not that of a top: no standard errors. */
  record NotATop() implements Doubt {}

  /** The search did not settle. */
  record NotSettled() implements Doubt {}

  /**
   * The draws of the posterior are not to be trusted: a few of them carry most of the weight.
   *
   * @param paretoK the shape of the weights' tail
   */
  record HeavyTail(double paretoK) implements Doubt {}
}
