package rungwise.clinic.fitting;

import java.math.BigDecimal;
import java.math.RoundingMode;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.known.AetiologyGroup;

/** A doubt in words, each a sentence. */
public final class DoubtWords {

  private static final int PLACES = 2;

  private DoubtWords() {}

  /** What speaks against signing, for whoever signs. */
  public static String of(Doubt doubt) {
    return switch (doubt) {
      case Doubt.FewCourses few ->
          "There are only "
              + counted(few.courses())
              + ": a fit is offered for signing from "
              + Doubt.LEAST_COURSES
              + " on.";
      case Doubt.SmallGroup small ->
          "The group "
              + group(small.group())
              + " has only "
              + counted(small.courses())
              + ": fewer than "
              + Doubt.LEAST_OF_GROUP
              + " say little of a group.";
      case Doubt.SeparatedGroup separated ->
          "In the group "
              + group(separated.group())
              + " every response is usable, or none is: what it needs cannot be told.";
      case Doubt.MissingGrade missing ->
          "No response has grade " + missing.grade() + ": a threshold beside it cannot be told.";
      case Doubt.NoDurations none ->
          "No duration at grade 3 or 4 is known: d0, d1 and tau are not fitted, and the result is"
              + " no population to forecast with.";
      case Doubt.OfCourses some -> "In " + counted(some.courses()) + doubted(some);
      case Doubt.AtBound bound ->
          "The search left "
              + bound.parameter()
              + " at an end of its range: it is not an estimate.";
      case Doubt.NotATop notATop ->
          "The curvature is not that of a top: there are no standard errors.";
      case Doubt.NotSettled notSettled -> "The search did not settle.";
      case Doubt.OfReports some -> checked(some);
      case Doubt.HeavyTail tail ->
          "A few draws of the posterior carry most of its weight (Pareto k "
              + BigDecimal.valueOf(tail.paretoK()).setScale(PLACES, RoundingMode.HALF_UP)
              + ", above 0.7): its means and deviations are not to be trusted.";
    };
  }

  private static String checked(Doubt.OfReports some) {
    return switch (some) {
      case Doubt.RangesMiss miss ->
          miss.missed()
              + " of "
              + miss.ranges()
              + " ranges miss what was reported, and by chance alone about "
              + Math.round(miss.byChance())
              + " do: the reports do not follow the model.";
      case Doubt.RareReports rare ->
          rare.rare()
              + " of "
              + rare.reported()
              + " grades and times are as rare as 1 in 100 after the same man's earlier reports,"
              + " and by chance alone about "
              + Math.round(rare.byChance())
              + " are: look for other units, slips and doses that did not go in.";
    };
  }

  private static String doubted(Doubt.OfCourses some) {
    return " (the first is number " + some.first() + ") " + what(some);
  }

  private static String what(Doubt.OfCourses some) {
    return switch (some) {
      case Doubt.LikeHours hours ->
          "usable responses were over within 5 minutes: were hours written for minutes?";
      case Doubt.LikeDays days -> "something lasted more than 3 days: look it up.";
      case Doubt.Unlike unlike ->
          "the reports contradict each other by the model: are they of one man, and in these"
              + " units?";
      case Doubt.Repeated repeated ->
          "stands what another man's course says, injection for injection: is he there twice?";
    };
  }

  private static String counted(int courses) {
    return courses == 1 ? "1 course" : courses + " courses";
  }

  /** The group for people; a file may have names of its own. */
  private static String group(String name) {
    return AetiologyGroup.of(name).map(AetiologyGroup::words).orElse(name);
  }
}
