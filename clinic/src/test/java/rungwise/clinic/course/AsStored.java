package rungwise.clinic.course;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening;

/** Facts as a store gives them back: its instants have no more than milliseconds. */
final class AsStored {

  private AsStored() {}

  static Instant milliseconds(Instant instant) {
    return instant.truncatedTo(ChronoUnit.MILLIS);
  }

  static CourseFact toTheMillisecond(CourseFact fact) {
    return switch (fact) {
      case CourseFact.DoseSigned signed -> signed(signed);
      case CourseFact.InjectionReported reported -> reported(reported);
      case CourseFact.ObservationStarted started ->
          new CourseFact.ObservationStarted(
              milliseconds(started.injectedAt()),
              started.preparation(),
              started.barrel(),
              started.drawn(),
              started.ordered(),
              started.spot(),
              started.before(),
              started.vial());
      case CourseFact.ObservationNoted noted ->
          new CourseFact.ObservationNoted(
              noted.observation(),
              noted.moment(),
              milliseconds(noted.at()),
              noted.grade(),
              noted.vitals());
      case CourseFact.HandedOver handed ->
          new CourseFact.HandedOver(
              handed.erection(), handed.to(), handed.tries(), milliseconds(handed.lastTry()));
      case CourseFact.Screened screened -> screened(screened);
      case CourseFact.ReportUnfinished unfinished ->
          new CourseFact.ReportUnfinished(
              unfinished.injectedAt().map(AsStored::milliseconds),
              unfinished.about(),
              unfinished.said());
      case CourseFact.TabletTaken taken ->
          new CourseFact.TabletTaken(taken.tablet(), milliseconds(taken.at()));
      case CourseFact.EmergencyReviewed reviewed ->
          new CourseFact.EmergencyReviewed(reviewed.softWhenSeen().map(AsStored::milliseconds));
      default -> fact; // holds no instant, or one of whole milliseconds
    };
  }

  private static CourseFact signed(CourseFact.DoseSigned signed) {
    return new CourseFact.DoseSigned(
        signed.plan(),
        signed.volume(),
        signed.place(),
        signed.rungs(),
        signed.ceiling(),
        signed.overridden(),
        signed.changed(),
        signed.basis(),
        milliseconds(signed.askedAt()),
        signed.advice(),
        signed.nextStep(),
        signed.accepted());
  }

  private static CourseFact reported(CourseFact.InjectionReported reported) {
    return new CourseFact.InjectionReported(
        milliseconds(reported.injectedAt()),
        reported.preparation(),
        reported.barrel(),
        reported.drawn(),
        reported.ordered(),
        reported.grade(),
        reported.soft(),
        reported.causes(),
        reported.place(),
        reported.observation(),
        reported.details());
  }

  private static CourseFact screened(CourseFact.Screened screened) {
    var answers = new EnumMap<Condition, Screening.Answered>(Condition.class);
    screened
        .answers()
        .forEach(
            (condition, one) ->
                answers.put(
                    condition, new Screening.Answered(one.answer(), milliseconds(one.at()))));
    return new CourseFact.Screened(answers);
  }
}
