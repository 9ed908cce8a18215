package rungwise.clinic.titration;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClockText;
import rungwise.clinic.clock.Present;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/**
 * Reads how long after the injection he was fully soft. A field counts for its own answer only;
 * what stands in another one is asked back, and so is whatever cannot be true together.
 *
 * @param told when that is: nothing that is over ended later
 */
record EndReading(ReportDraft draft, ClinicTime time, Present told, PartFaults faults) {

  private static final TimeSpan EMERGENCY = DurationLimits.EMERGENCY.value();
  private static final long MILLISECONDS_IN_A_MINUTE = TimeSpan.ofMinutes(1).milliseconds();

  /** What is kept; empty if something must be asked back. */
  Optional<SoftAfter> read(Optional<Instant> injected, Optional<Grade> grade) {
    Optional<EndAnswer> answer = EndAnswer.of(draft.text(ReportPart.SOFT));
    if (answer.isEmpty()) {
      faults.add(ReportPart.SOFT, "Choose when it was soft again, or that it is not known.");
    }
    strangers(answer);
    Optional<SoftAfter> soft = answer.flatMap(one -> said(one, injected));
    answer
        .filter(one -> one == EndAnswer.NO_CHANGE)
        .flatMap(one -> grade)
        .filter(Grade::isAnyFirmness)
        .ifPresent(
            firm ->
                faults.add(
                    ReportPart.SOFT,
                    "\"No change at all\" and \""
                        + firm.words()
                        + "\" cannot both be: choose how long until he was soft, or rigidity 0."));
    return injected.isEmpty() || !told.isKnown() || injected.get().isAfter(told.now())
        ? soft
        : soft.flatMap(one -> upToTheCall(one, TimeSpan.between(injected.get(), told.now())));
  }

  /** Fields of answers that were not chosen. */
  private void strangers(Optional<EndAnswer> chosen) {
    Arrays.stream(EndAnswer.values())
        .filter(other -> !chosen.equals(Optional.of(other)))
        .flatMap(other -> other.parts().stream().map(part -> new Stranger(other, part)))
        .filter(stranger -> draft.has(stranger.part()))
        .forEach(stranger -> faults.add(stranger.part(), strangerWords(chosen, stranger)));
  }

  private record Stranger(EndAnswer answer, ReportPart part) {}

  private String strangerWords(Optional<EndAnswer> chosen, Stranger stranger) {
    String typed = draft.text(stranger.part()).strip();
    boolean isLong =
        TimeSpan.parseMinutes(typed).found().filter(one -> !one.isLessThan(EMERGENCY)).isPresent();
    String span =
        isLong ? ", which is " + TimeSpan.parseMinutes(typed).orThrow() + ": an emergency" : "";
    return chosen.map(one -> "You chose \"" + one.words() + "\" and wrote ").orElse("You wrote ")
        + typed
        + " under \""
        + stranger.answer().words()
        + "\""
        + span
        + ". Choose the right one, or empty this field.";
  }

  private Optional<SoftAfter> said(EndAnswer answer, Optional<Instant> injected) {
    return switch (answer) {
      case NO_CHANGE, NOT_KNOWN -> Optional.of(new SoftAfter.NotKnown());
      case UP_TO_60, FROM_61, FROM_120 -> answer.span().map(span -> span);
      case FROM_240 -> Optional.of(new SoftAfter.AtLeast(EMERGENCY));
      case EXACTLY -> minutes(ReportPart.EXACT_MINUTES).map(SoftAfter.Exactly::new);
      case AT_LEAST -> minutes(ReportPart.LEAST_MINUTES).map(SoftAfter.AtLeast::new);
      case BETWEEN -> between();
      case ABOUT ->
          injected.flatMap(at -> clock(ReportPart.SOFT_AT, at)).map(SoftAfter.Exactly::new);
      case STILL ->
          draft.has(ReportPart.SEEN_AT)
              ? injected.flatMap(at -> clock(ReportPart.SEEN_AT, at)).map(SoftAfter.AtLeast::new)
              : injected.filter(at -> !told.isStillToCome(at)).map(this::still);
    };
  }

  /** Still firm while it is told; for how long, only a clock that is believed can say. */
  private SoftAfter still(Instant injected) {
    return new SoftAfter.AtLeast(
        told.isKnown()
            ? wholeMinutes(TimeSpan.between(injected, told.now()))
            : TimeSpan.ofMinutes(0));
  }

  private Optional<TimeSpan> minutes(ReportPart part) {
    return faults.take(part, TimeSpan.parseMinutes(draft.text(part)));
  }

  private Optional<SoftAfter> between() {
    Optional<TimeSpan> from =
        faults.take(
            ReportPart.FROM_MINUTES,
            TimeSpan.parseMinutesFromZero(draft.text(ReportPart.FROM_MINUTES)));
    Optional<TimeSpan> before = minutes(ReportPart.BEFORE_MINUTES);
    if (from.isEmpty() || before.isEmpty()) {
      return Optional.empty();
    }
    if (!before.get().isMoreThan(from.get())) {
      faults.add(
          ReportPart.BEFORE_MINUTES,
          "Soft between "
              + from.get()
              + " and "
              + before.get()
              + " cannot be: the second time must be the later one.");
      return Optional.empty();
    }
    return Optional.of(new SoftAfter.Between(from.get(), before.get()));
  }

  /** How long after the injection the clocks first showed that time. */
  private Optional<TimeSpan> clock(ReportPart part, Instant injected) {
    Optional<Instant> at =
        faults
            .take(part, ClockText.read(draft.text(part)))
            .flatMap(
                clock ->
                    takeClock(
                        part,
                        time.readFrom(
                            injected, clock, draft.occurrence(ReportPart.SOFT_OCCURRENCE))));
    if (at.filter(told::isStillToCome).isPresent()) {
      faults.add(
          part,
          time.words(at.get())
              + " is still to come, and he injected "
              + time.words(injected)
              + ": check both times.");
      return Optional.empty();
    }
    if (at.filter(injected::equals).isPresent() && part == ReportPart.SOFT_AT) {
      faults.add(part, "That is the very time of the injection: ask for both again.");
      return Optional.empty();
    }
    return at.map(one -> TimeSpan.between(injected, one));
  }

  private Optional<Instant> takeClock(ReportPart part, Reading<Instant> reading) {
    return faults.take(part, reading);
  }

  /** It cannot have lasted longer than it is ago, and what is over ended before it was told. */
  private Optional<SoftAfter> upToTheCall(SoftAfter soft, TimeSpan since) {
    TimeSpan least = leastOf(soft);
    if (least.isMoreThan(since)) {
      faults.add(
          EndAnswer.of(draft.text(ReportPart.SOFT)).orElseThrow().parts().stream()
              .findFirst()
              .orElse(ReportPart.SOFT),
          "It cannot have lasted "
              + least
              + ": the injection was "
              + since
              + " ago. Check the time of the injection and how long it lasted.");
      return Optional.empty();
    }
    boolean isOver = draft.text(ReportPart.SOFT).equals(EndAnswer.FROM_240.token());
    return Optional.of(
        switch (soft) {
          case SoftAfter.Between between when between.before().isMoreThan(since) ->
              endedWithin(between.from(), since);
          case SoftAfter.AtLeast atLeast when isOver -> endedWithin(atLeast.duration(), since);
          default -> soft;
        });
  }

  private static SoftAfter endedWithin(TimeSpan from, TimeSpan since) {
    return Stream.of(wholeMinutes(since), since)
        .filter(end -> end.isMoreThan(from))
        .findFirst()
        .<SoftAfter>map(end -> new SoftAfter.Between(from, end))
        .orElseGet(() -> new SoftAfter.Exactly(from));
  }

  private static TimeSpan wholeMinutes(TimeSpan span) {
    return new TimeSpan(span.milliseconds() - span.milliseconds() % MILLISECONDS_IN_A_MINUTE);
  }

  private static TimeSpan leastOf(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> exactly.duration();
      case SoftAfter.AtLeast atLeast -> atLeast.duration();
      case SoftAfter.Between between -> between.from();
      case SoftAfter.NotKnown notKnown -> TimeSpan.ofMinutes(0);
    };
  }

  /**
   * Whether anything that was entered says, or could mean, 4 hours or still firm: what was chosen,
   * and every field, whether or not it belongs to what was chosen. What cannot be read may be.
   */
  boolean mayBeFourHours(Optional<Instant> injected) {
    boolean isChosen =
        EndAnswer.of(draft.text(ReportPart.SOFT)).filter(EndAnswer::mayBeFourHours).isPresent();
    return isChosen
        || draft.has(ReportPart.SEEN_AT)
        || draft.has(ReportPart.LEAST_MINUTES)
        || Stream.of(
                ReportPart.EXACT_MINUTES,
                ReportPart.FROM_MINUTES,
                ReportPart.BEFORE_MINUTES,
                ReportPart.ONSET,
                ReportPart.USABLE)
            .filter(draft::has)
            .anyMatch(this::mayBeFourHours)
        || mayBeFourHoursByTheClock(injected);
  }

  private boolean mayBeFourHours(ReportPart part) {
    Optional<TimeSpan> span = TimeSpan.parseMinutesFromZero(draft.text(part)).found();
    boolean isBefore = part == ReportPart.BEFORE_MINUTES;
    return span.map(one -> one.isMoreThan(EMERGENCY) || (one.equals(EMERGENCY) && !isBefore))
        .orElse(true);
  }

  private boolean mayBeFourHoursByTheClock(Optional<Instant> injected) {
    if (!draft.has(ReportPart.SOFT_AT) || injected.isEmpty()) {
      return false;
    }
    // The later of two that the clocks showed: the other one would be the shorter.
    return ClockText.read(draft.text(ReportPart.SOFT_AT))
        .found()
        .flatMap(
            clock -> time.readFrom(injected.get(), clock, ClinicTime.Occurrence.SECOND).found())
        .map(end -> !told.isStillToCome(end) && !EMERGENCY.after(injected.get()).isAfter(end))
        .orElse(true);
  }
}
