package rungwise.dosing.guard;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.TimeSpan;

/**
 * The instants at which something that a guard says may begin or end while nothing is written:
 * between two of them every guard says the same. There may be more than are needed, never fewer.
 */
public final class Turns {

  private Turns() {}

  /**
   * All of them, passed ones too, in no order.
   *
   * @param signed the dose in force, with what it overrode until a date
   */
  public static List<Instant> of(Question question, Optional<SignedDose> signed) {
    return Stream.of(
            TimeGuards.counted(question).stream().flatMap(one -> around(question, one)),
            UpkeepGuards.turns(question),
            tablet(question),
            question.vial().stream().map(vial -> vial.end().at()),
            signed.stream()
                .flatMap(dose -> dose.overridden().stream())
                .flatMap(one -> one.until().stream()))
        .flatMap(one -> one)
        .toList();
  }

  /** Spans are counted both ways, as an injection may lie after the instant that is asked about. */
  private static Stream<Instant> around(Question question, Injection injection) {
    Instant at = injection.at();
    Stream<TimeSpan> spans =
        Stream.concat(
            Stream.of(
                TimeSpan.ofMinutes(0),
                question.spacing().value(),
                TimeGuards.DAY,
                TimeGuards.SEVEN_DAYS,
                SameVisit.WAIT.value(),
                SameVisit.WITHIN.value()),
            question.protocol().sameVisit().map(Protocol.SameVisit::within).stream());
    int months = question.protocol().limits().lapseMonths().value();
    return Stream.concat(
        Stream.of(UpkeepGuards.monthsAfter(at, months)),
        spans.flatMap(
            span -> Stream.of(span.after(at), at.minus(span.milliseconds(), ChronoUnit.MILLIS))));
  }

  private static Stream<Instant> tablet(Question question) {
    TimeSpan wait = TimeSpan.ofHours(question.protocol().limits().pde5Hours().value());
    return question.circumstances().lastTablet().stream().map(one -> wait.after(one.at()));
  }
}
