package rungwise.checks.adversary;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.checks.adversary.Weakening.Answer;

/** The adversary finds faults: with one guard or predicate weakened, some record breaks a law. */
final class WeakeningTest {

  private static final int AT_MOST = 5_000;

  private static final List<Weakening> WEAKENINGS =
      List.of(
          new Weakening(
              "no emergency is open", "dosing.history.History", "openEmergencies", Answer.NONE),
          new Weakening("no volume is closed", "dosing.history.History", "closing", Answer.EMPTY),
          new Weakening(
              "a volume is open again as soon as any reopening is written",
              "dosing.history.History",
              "isReopened",
              Answer.YES),
          new Weakening(
              "a higher dose after a long one",
              "dosing.history.History",
              "forbiddingHigher",
              Answer.EMPTY),
          new Weakening(
              "only a known duration was too long",
              "dosing.history.Injection",
              "forbidsHigherDose",
              Answer.NO),
          new Weakening(
              "a content in another preparation closes nothing",
              "dosing.known.Preparation",
              "holdsAtLeast",
              Answer.NO),
          new Weakening(
              "more than one step up", "dosing.guard.DoseGuards", "oneStepUp", Answer.EMPTY),
          new Weakening(
              "what went wrong proves as much", "dosing.history.Injection", "wentIn", Answer.YES),
          new Weakening(
              "whatever is told of the clinic was seen there",
              "dosing.history.Injection",
              "provesInClinic",
              Answer.YES),
          new Weakening(
              "what was struck binds nobody", "dosing.history.Struck", "counts", Answer.NO),
          new Weakening(
              "an override lifts whatever comes",
              "dosing.guard.OverriddenHold",
              "lifts",
              Answer.YES),
          new Weakening(
              "any later injection answers a long one",
              "dosing.history.History",
              "isAnswer",
              Answer.YES),
          new Weakening("new stock like old", "dosing.guard.NewStock", "restartAt", Answer.EMPTY),
          new Weakening("no spacing", "dosing.guard.TimeGuards", "spacing", Answer.NOTHING),
          new Weakening(
              "any number a week", "dosing.guard.TimeGuards", "weeklyCount", Answer.NOTHING),
          new Weakening(
                  "a second dose at any time of the day",
                  "dosing.guard.SameVisit",
                  "isWithin",
                  Answer.YES)
              .from(1645),
          new Weakening(
              "whatever the label says", "dosing.history.VialInHand$Label", "isOf", Answer.YES),
          new Weakening(
              "nothing is missing for home",
              "dosing.history.Readiness",
              "missing",
              Answer.NO_WORDS),
          new Weakening(
              "nobody is under observation", "clinic.course.CourseFile", "observing", Answer.NONE),
          new Weakening(
              "everybody may do what is a prescriber's",
              "clinic.standing.CourseChanges$By",
              "includes",
              Answer.YES),
          new Weakening(
              "the label of the vial says nothing",
              "clinic.course.VialLabels",
              "labelOf",
              Answer.EMPTY),
          new Weakening(
              "a vial fares well wherever it was", "clinic.befell.VialWord", "stops", Answer.NO),
          new Weakening(
              "every record is as it was written",
              "clinic.course.CourseFile",
              "flaws",
              Answer.NONE),
          new Weakening("no tablet holds", "dosing.guard.TimeGuards", "tablet", Answer.NOTHING),
          new Weakening(
              "what was shown holds for ever",
              "clinic.course.CourseFact$ReadinessRecorded",
              "expired",
              Answer.EMPTY),
          new Weakening(
              "what is told late is no news", "clinic.standing.ReportFlags", "isNews", Answer.NO),
          new Weakening("every flag was seen", "clinic.standing.ReportFlag", "isSeen", Answer.YES),
          new Weakening(
              "nobody has left while it was firm", "clinic.day.OpenErection", "isLeft", Answer.NO),
          new Weakening(
                  "what was taken back was wrong",
                  "clinic.past.PastReading",
                  "isConfirmed",
                  Answer.YES)
              .from(5935),
          new Weakening(
              "an open call holds nothing", "clinic.called.CallLog", "holding", Answer.NONE),
          new Weakening(
              "as much as was told elsewhere",
              "dosing.guard.TakenOverGuards",
              "ofTheDose",
              Answer.NONE),
          new Weakening(
                  "home at once after another clinic",
                  "dosing.guard.TakenOverGuards",
                  "forHome",
                  Answer.NONE)
              .from(1805),
          new Weakening("a pause holds nothing", "clinic.standing.LifeLog", "halt", Answer.EMPTY),
          new Weakening(
              "no course has ever ended", "clinic.course.OrderInForce", "isEnd", Answer.NO),
          new Weakening(
              "no contraindication matters",
              "dosing.guard.CourseGuards",
              "screening",
              Answer.NOTHING));

  static List<Weakening> weakenings() {
    return WEAKENINGS;
  }

  @ParameterizedTest
  @MethodSource("weakenings")
  @Tag("long")
  void each_guard_that_is_weakened_is_found(Weakening weakening) {
    String found = weakening.found(AT_MOST);
    System.out.println(weakening.says() + ": " + found);

    assertThat(found).doesNotStartWith("no law");
  }

  @Test
  void at_least_fifteen_are_weakened_one_at_a_time() {
    assertThat(weakenings())
        .extracting(one -> one.type() + "." + one.method())
        .doesNotHaveDuplicates()
        .hasSizeGreaterThanOrEqualTo(15);
  }
}
