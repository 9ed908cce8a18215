package rungwise.dosing.guard;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/**
 * The guards that ask what has changed or run out since a dose was right: an examination, a long
 * time without an injection, a recall, a stricter version of the protocol.
 */
final class UpkeepGuards {

  private UpkeepGuards() {}

  /**
   * Nothing is injected by a record that is not as it was written, nor while it is not known what
   * time it is or the course does not run, nor of a preparation that the clinic has taken out of
   * use.
   */
  static List<Verdict> ofTheCourse(Question question) {
    var verdicts = new ArrayList<Verdict>();
    List<String> flaws = question.circumstances().flaws();
    if (!flaws.isEmpty()) {
      verdicts.add(
          Verdict.of(
              GuardRule.RECORD_NOT_SOUND,
              flaws.stream().map(flaw -> Fact.said("what is wrong", flaw)).toArray(Fact[]::new)));
    }
    question
        .circumstances()
        .clock()
        .map(why -> Verdict.of(GuardRule.CLOCK_NOT_KNOWN, Fact.said("clock", why)))
        .ifPresent(verdicts::add);
    question.circumstances().halt().map(UpkeepGuards::halted).ifPresent(verdicts::add);
    if (question.circumstances().recalled()) {
      verdicts.add(
          Verdict.of(
              GuardRule.RECALLED, Fact.said("preparation", question.preparation().composition())));
    }
    return List.copyOf(verdicts);
  }

  private static Verdict halted(Circumstances.Halt halt) {
    return switch (halt.kind()) {
      case PAUSED -> Verdict.of(GuardRule.COURSE_PAUSED, new Fact.Happened("paused", halt.since()));
      case ENDED -> Verdict.of(GuardRule.COURSE_ENDED, new Fact.Happened("ended", halt.since()));
    };
  }

  /** What speaks against one volume. */
  static List<Verdict> ofTheDose(Question question, Volume volume) {
    var verdicts = new ArrayList<Verdict>();
    for (Protocol newer : question.circumstances().newer()) {
      if (newer.isFor(question.preparation())) {
        newerLimits(question, newer, volume, verdicts);
      }
    }
    aboveBeforeLapse(question, volume).ifPresent(verdicts::add);
    boolean isMore =
        question
            .history()
            .lastOf(question.preparation())
            .filter(last -> volume.isMoreThan(last.drawn()))
            .isPresent();
    if (isMore && !examinationDue(question).isAfter(question.now())) {
      verdicts.add(Verdict.of(GuardRule.EXAMINATION_OVERDUE, examination(question)));
    }
    return verdicts;
  }

  private static void newerLimits(
      Question question, Protocol newer, Volume volume, List<Verdict> verdicts) {
    newer
        .ceiling()
        .value()
        .in(question.preparation())
        .filter(most -> ExactVolume.of(volume).compareTo(most) > 0)
        .ifPresent(
            most ->
                verdicts.add(
                    stricter(newer, "maximum dose", newer.ceiling().value(), newer.ceiling())));
    newer.componentLimits().stream()
        .filter(limit -> limit.isPassedBy(question.preparation(), volume))
        .map(limit -> stricter(newer, "limit", limit, new Sourced<>(limit, limit.source())))
        .forEach(verdicts::add);
  }

  private static Verdict stricter(Protocol newer, String what, Object most, Sourced<?> sourced) {
    return Verdict.of(
        GuardRule.NEWER_VERSION_FORBIDS,
        Fact.said("protocol", newer.title() + ", version " + newer.version()),
        Fact.said(what, most),
        Fact.said("source", sourced.source().words()));
  }

  /** What forbids home use. */
  static List<Verdict> forHome(Question question) {
    var verdicts = new ArrayList<Verdict>();
    Sourced<Integer> grace = question.protocol().limits().graceDays();
    Instant end = examinationDue(question).plus(grace.value(), ChronoUnit.DAYS);
    if (!end.isAfter(question.now())) {
      verdicts.add(
          Verdict.of(
              GuardRule.EXAMINATION_LONG_OVERDUE,
              examination(question)[0],
              examination(question)[1],
              Fact.said("days for which home use may go on after it", grace.value()),
              Fact.said("source", grace.source().words())));
    }
    lapsed(question).ifPresent(verdicts::add);
    return verdicts;
  }

  /**
   * After an emergency at once: neither an examination before it nor the start of the course counts
   * any more. One that nobody knows of was due at the beginning of time.
   */
  private static Instant examinationDue(Question question) {
    Optional<Instant> emergency = question.notExaminedSince();
    if (emergency.isPresent()) {
      return emergency.get();
    }
    int months = question.protocol().limits().reviewMonths().value();
    return question
        .circumstances()
        .examined()
        .or(() -> question.circumstances().began())
        .map(at -> monthsAfter(at, months))
        .orElse(Instant.EPOCH);
  }

  /** When an examination, its grace or the answers of a screening run out. */
  static Stream<Instant> turns(Question question) {
    Instant due = examinationDue(question);
    int months = question.protocol().limits().screeningMonths().value();
    return Stream.concat(
        Stream.of(due, due.plus(question.protocol().limits().graceDays().value(), ChronoUnit.DAYS)),
        question.screening().oldest(question.preparation()).stream()
            .map(oldest -> monthsAfter(oldest, months)));
  }

  private static Fact[] examination(Question question) {
    Circumstances around = question.circumstances();
    Fact last =
        question
            .notExaminedSince()
            .<Fact>map(at -> new Fact.Happened("not examined since an emergency", at))
            .or(() -> around.examined().map(at -> new Fact.Happened("examined", at)))
            .or(() -> around.began().map(at -> new Fact.Happened("not examined; course begun", at)))
            .orElseGet(() -> Fact.said("examined", "not known"));
    var months = question.protocol().limits().reviewMonths();
    return new Fact[] {last, Fact.said("months between two examinations", months.value())};
  }

  /**
   * The last time without an injection that was longer than the protocol lets it be, unless a dose
   * was given in the clinic since.
   */
  private static Optional<Verdict> lapsed(Question question) {
    Sourced<Integer> months = question.protocol().limits().lapseMonths();
    List<Injection> all = question.history().sinceChangeTo(question.preparation());
    Optional<Injection> before = Optional.empty();
    boolean isLapsed = false;
    Optional<Injection> last = Optional.empty();
    for (Injection one : all) {
      if (last.filter(earlier -> isLong(earlier, one.at(), months)).isPresent()) {
        isLapsed = true;
        before = last;
      }
      if (one.provesInClinic()) {
        isLapsed = false;
      }
      last = Optional.of(one);
    }
    if (last.filter(earlier -> isLong(earlier, question.now(), months)).isPresent()) {
      isLapsed = true;
      before = last;
    }
    return isLapsed ? before.map(one -> lapseAfter(one, months)) : Optional.empty();
  }

  /** After such a time no more than the last dose that was proven, or the lowest step. */
  private static Optional<Verdict> aboveBeforeLapse(Question question, Volume volume) {
    if (lapsed(question).isEmpty()) {
      return Optional.empty();
    }
    Volume most =
        question.history().sinceChangeTo(question.preparation()).reversed().stream()
            .filter(Injection::provesShort)
            .findFirst()
            .map(Injection::drawn)
            .orElse(question.ladder().first());
    return Optional.of(most)
        .filter(volume::isMoreThan)
        .map(
            last ->
                Verdict.of(GuardRule.ABOVE_BEFORE_LAPSE, Fact.said("highest possible now", last)));
  }

  private static boolean isLong(Injection from, Instant to, Sourced<Integer> months) {
    return !monthsAfter(from.at(), months.value()).isAfter(to);
  }

  private static Verdict lapseAfter(Injection last, Sourced<Integer> months) {
    return Verdict.of(
        GuardRule.LAPSED,
        new Fact.Happened("the last injection before it", last.at()),
        Fact.said("months without an injection", months.value()),
        Fact.said("source", months.source().words()));
  }

  static Instant monthsAfter(Instant start, int months) {
    return start.atOffset(ZoneOffset.UTC).plusMonths(months).toInstant();
  }
}
