package rungwise.clinic.course;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.measured.Vitals;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.TimeSpan;

/** Injections and what was seen of them, with every choice that they may hold. */
final class SampleInjections {

  private static final Instant YESTERDAY = SampleFacts.NOW.minusSeconds(86_400);
  private static final Vitals VITALS = new Vitals(128, 76, 72);
  private static final SoftAfter NOT_KNOWN = new SoftAfter.NotKnown();

  private SampleInjections() {}

  /** Observations and notes with all that they may hold, and with none of it. */
  static List<CourseFact> observations(EntryId earlier) {
    var facts = new ArrayList<CourseFact>();
    facts.add(started(Optional.empty(), Optional.empty(), Optional.empty()));
    for (Spot.Side side : Spot.Side.values()) {
      facts.add(
          started(Optional.of(new Spot(side, 10)), Optional.of(VITALS), Optional.of(earlier)));
    }
    for (Moment moment : Moment.values()) {
      facts.add(noted(earlier, moment, Optional.empty(), Optional.empty()));
      facts.add(noted(earlier, moment, Optional.of(Grade.FULLER), Optional.of(VITALS)));
    }
    return facts;
  }

  private static ObservationStarted started(
      Optional<Spot> spot, Optional<Vitals> before, Optional<EntryId> vial) {
    return new ObservationStarted(
        YESTERDAY,
        SampleFacts.PREPARATION,
        "u100-1",
        SampleFacts.volume(125),
        spot.map(known -> SampleFacts.volume(250)),
        spot,
        before,
        vial);
  }

  private static ObservationNoted noted(
      EntryId observation, Moment moment, Optional<Grade> grade, Optional<Vitals> vitals) {
    return new ObservationNoted(observation, moment, YESTERDAY.plusMillis(900_001), grade, vitals);
  }

  /** Every way in which the end of an erection is known. */
  static List<SoftAfter> durations() {
    return List.of(
        new SoftAfter.Exactly(TimeSpan.ofMinutes(45)),
        new SoftAfter.Exactly(new TimeSpan(2_730_001)),
        new SoftAfter.AtLeast(TimeSpan.ofHours(5)),
        new SoftAfter.Between(TimeSpan.ofMinutes(0), TimeSpan.ofMinutes(30)),
        new SoftAfter.Between(TimeSpan.ofMinutes(60), TimeSpan.ofMinutes(121)),
        NOT_KNOWN);
  }

  /** Reports with every duration, grade, cause, place and answer, full ones and bare ones. */
  static List<CourseFact> reports(EntryId earlier) {
    var facts = new ArrayList<CourseFact>();
    for (SoftAfter soft : durations()) {
      facts.add(report(soft, Grade.USABLE, SimpleCauses.NOT_ASKED, InjectionDetails.NONE));
    }
    for (Grade grade : Grade.values()) {
      for (SimpleCauses causes : SimpleCauses.values()) {
        facts.add(report(NOT_KNOWN, grade, causes, InjectionDetails.NONE));
      }
    }
    for (Answer answer : Answer.values()) {
      InjectionDetails full = full(answer, EnumSet.allOf(Cause.class), earlier);
      facts.add(report(NOT_KNOWN, Grade.FULLER, SimpleCauses.ONE_FOUND, full));
      facts.add(placed(Place.HOME, Optional.empty(), full(answer, Set.of(Cause.BUBBLE), earlier)));
    }
    facts.add(placed(Place.CLINIC, Optional.of(earlier), InjectionDetails.NONE));
    return facts;
  }

  /** Unfinished reports with all that they may hold, and with none of it. */
  static List<CourseFact> unfinished(EntryId earlier) {
    return List.of(
        new CourseFact.ReportUnfinished(Optional.empty(), Optional.empty(), List.of()),
        new CourseFact.ReportUnfinished(
            Optional.of(YESTERDAY),
            Optional.of(earlier),
            List.of(
                new CourseFact.ReportUnfinished.Said("soft", "still"),
                new CourseFact.ReportUnfinished.Said("wrong", "LEAK"),
                new CourseFact.ReportUnfinished.Said("wrong", "\"two\"; 'quotes' \u2265"))));
  }

  private static InjectionDetails full(Answer answer, Set<Cause> causes, EntryId vial) {
    return new InjectionDetails(
        Optional.of(TimeSpan.ofMinutes(0)),
        Optional.of(new TimeSpan(2_400_001)),
        Optional.of(new Spot(Spot.Side.HIS_LEFT, 12)),
        Optional.of(InjectionDetails.MOST_PAIN),
        answer,
        answer,
        causes,
        Optional.of(vial),
        "\"half\" a tablet; his own",
        answer);
  }

  private static InjectionReported report(
      SoftAfter soft, Grade grade, SimpleCauses causes, InjectionDetails details) {
    return report(soft, grade, causes, Place.HOME, Optional.empty(), details);
  }

  private static InjectionReported placed(
      Place place, Optional<EntryId> observation, InjectionDetails details) {
    return report(NOT_KNOWN, Grade.FULLER, SimpleCauses.ONE_FOUND, place, observation, details);
  }

  private static InjectionReported report(
      SoftAfter soft,
      Grade grade,
      SimpleCauses causes,
      Place place,
      Optional<EntryId> observation,
      InjectionDetails details) {
    return new InjectionReported(
        YESTERDAY,
        SampleFacts.PREPARATION,
        "u100-1",
        SampleFacts.volume(125),
        grade == Grade.NONE ? Optional.empty() : Optional.of(SampleFacts.volume(250)),
        grade,
        soft,
        causes,
        place,
        observation,
        details);
  }
}
