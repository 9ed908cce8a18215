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

  /**
   * Two usable responses of one man are hardly over so soon: hours may have been written for
   * minutes. An assumption.
   */
  double LEAST_USABLE_MINUTES = 5;

  int MEANT_IN_HOURS = 2;

  /** A duration that is doubted and kept: late comers are real. Common practice, no source. */
  double MOST_MINUTES = 3 * 24 * 60.0;

  /** So many equal durations at equal doses are hardly those of two men: an assumption. */
  int EQUAL_DURATIONS = 3;

  /** Among so many men: there one more is asked for each tenfold of them. */
  int MEN_OF_EQUAL_DURATIONS = 10_000;

  /**
   * How many equal durations make two courses of so many suspect. Of 1,000,000 made men two pairs
   * had three and more equal by chance, so an assumption that grows with the pairs there are.
   */
  static int equalDurations(int courses) {
    int least = EQUAL_DURATIONS;
    for (long men = MEN_OF_EQUAL_DURATIONS; men < courses; men *= 10) {
      least++;
    }
    return least;
  }

  /** Something that is doubted in some courses. */
  sealed interface OfCourses extends Doubt {

    /** In how many. */
    int courses();

    /** The number of the first of them, from 1. */
    int first();
  }

  /**
   * More than one usable response that was over within {@link #LEAST_USABLE_MINUTES}.
   *
   * @param courses in how many courses
   * @param first the number of the first of them, from 1
   */
  record LikeHours(int courses, int first) implements OfCourses {}

  /**
   * Durations above {@link #MOST_MINUTES}.
   *
   * @param courses in how many courses
   * @param first the number of the first of them, from 1
   */
  record LikeDays(int courses, int first) implements OfCourses {}

  /**
   * Courses that are, injection for injection, one that came before.
   *
   * @param courses how many
   * @param first the number of the first of them, from 1
   */
  record Repeated(int courses, int first) implements OfCourses {}

  /** A parameter that the search found at an end of its range. */
  record AtBound(String parameter) implements Doubt {}

  /** The curvature at the end of the search is not that of a top: no standard errors. */
  record NotATop() implements Doubt {}

  /** The search did not settle. */
  record NotSettled() implements Doubt {}

  /** Something that the predictive check found oftener than chance would bring. */
  sealed interface OfReports extends Doubt {}

  /**
   * More ranges of the predictive check miss what was reported than chance would bring.
   *
   * @param missed how many do
   * @param ranges of so many
   * @param byChance as many would by chance alone
   */
  record RangesMiss(int missed, int ranges, double byChance) implements OfReports {}

  /**
   * More grades and times are as rare as 1 in 100 than chance would bring.
   *
   * @param rare how many are
   * @param reported of so many
   * @param byChance as many would be by chance alone
   */
  record RareReports(int rare, int reported, double byChance) implements OfReports {}

  /**
   * Men whose reports together are rarer than one of so many men's may be.
   *
   * @param courses how many
   * @param first the number of the first of them, from 1
   */
  record Unlike(int courses, int first) implements OfCourses {}

  /**
   * The draws of the posterior are not to be trusted: a few of them carry most of the weight.
   *
   * @param paretoK the shape of the weights' tail
   */
  record HeavyTail(double paretoK) implements Doubt {}
}
