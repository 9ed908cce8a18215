package rungwise.clinic.rescuing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.called.RescueRecord;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueLog;

/** Rescues in words. */
public final class RescueViews {

  private final ClinicTime time;
  private final Function<AccountId, String> names;

  /**
   * Words in the clinic's zone.
   *
   * @param names the full name of an account
   */
  public RescueViews(ClinicTime time, Function<AccountId, String> names) {
    this.time = time;
    this.names = names;
  }

  /**
   * Everything that was given and measured in the rescues of a course.
   *
   * @param limits what the clinic has signed, or the sample
   */
  public RescueView of(CourseState state, RescueLimits limits) {
    RescueRecord record = RescueRecord.of(state.file());
    RescueLog log =
        record.log(
            state.question().screening().answerTo(Condition.MAO_INHIBITOR), Optional.empty());
    Instant now = state.now();
    Optional<Instant> next = log.notBefore(limits);
    return new RescueView(
        lines(state, record, log.flags(limits), limits),
        record.given().isEmpty()
            ? Optional.empty()
            : Optional.of(RescueWords.mcg(log.inLastHour(now))),
        log.isAmountUnknown(now),
        RescueWords.mcg(limits.inAnHour()),
        next.map(at -> time.day(at, now)),
        next.map(at -> ClinicTime.distance(now, at)).orElse(""),
        next.filter(at -> at.isAfter(now)).isPresent());
  }

  private List<RescueView.Line> lines(
      CourseState state, RescueRecord record, List<RescueLog.Flag> flags, RescueLimits limits) {
    Set<EntryId> counting =
        record.counting().stream().map(one -> one.entry().id()).collect(Collectors.toSet());
    var lines = new ArrayList<RescueView.Line>();
    for (Written<RescueWritten> one : inTime(state)) {
      boolean isStruck = !counting.contains(one.entry().id());
      lines.add(
          new RescueView.Line(
              one.entry().id().text(),
              RescueWords.of(one.fact().word(), time),
              isStruck ? List.of() : flagsOf(one.fact().word(), flags, limits),
              isStruck,
              written(one, state.now()) + struck(state, one)));
    }
    return lines;
  }

  private static List<Written<RescueWritten>> inTime(CourseState state) {
    Comparator<Written<RescueWritten>> order =
        Comparator.comparing(one -> at(one.fact().word()).orElse(one.entry().recordedAt()));
    return state.file().everWritten(RescueWritten.class).stream()
        .filter(one -> !(one.fact().word() instanceof RescueWord.Struck))
        .sorted(order.reversed())
        .toList();
  }

  private static Optional<Instant> at(RescueWord word) {
    return switch (word) {
      case RescueWord.Given given -> Optional.of(given.at());
      case RescueWord.Measured measured -> Optional.of(measured.at());
      case RescueWord.GasTaken gas -> Optional.of(gas.at());
      case RescueWord.Prepared prepared -> Optional.of(prepared.at());
      case RescueWord.Ticked ticked -> Optional.of(ticked.at());
      case RescueWord.Struck struck -> Optional.empty();
    };
  }

  private static List<String> flagsOf(
      RescueWord word, List<RescueLog.Flag> flags, RescueLimits limits) {
    return word instanceof RescueWord.Given given
        ? flags.stream()
            .filter(flag -> flag.given().equals(given.counted()))
            .map(flag -> RescueWords.of(flag, limits))
            .distinct()
            .toList()
        : List.of();
  }

  private String written(Written<RescueWritten> one, Instant now) {
    return time.clock(one.entry().recordedAt(), now)
        + ", "
        + names.apply(one.entry().recordedBy())
        + one.entry().reason().map(words -> ": " + words).orElse("");
  }

  private String struck(CourseState state, Written<RescueWritten> one) {
    return state.file().everWritten(RescueWritten.class).stream()
        .filter(other -> other.entry().corrects().equals(Optional.of(one.entry().id())))
        .findFirst()
        .map(other -> "; struck " + written(other, state.now()))
        .orElse("");
  }
}
