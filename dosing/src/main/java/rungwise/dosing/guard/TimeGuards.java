package rungwise.dosing.guard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.quantities.TimeSpan;

/** The guards that ask about an instant. They count instants, so a clock change moves nothing. */
public final class TimeGuards {

  /** "Three in seven days" is a window of 168 hours with the far end open. */
  public static final TimeSpan SEVEN_DAYS = TimeSpan.ofHours(168);

  /** In any 24 hours there are at most two doses, whatever was signed. */
  static final TimeSpan DAY = TimeSpan.ofHours(24);

  private static final int MOST_IN_A_DAY = 2;

  private TimeGuards() {}

  /** What forbids an injection at the question's instant. */
  public static List<Verdict> ask(Question question) {
    var verdicts = new ArrayList<Verdict>();
    spacing(question, verdicts);
    thirdInADay(question, verdicts);
    weeklyCount(question, verdicts);
    tablet(question, verdicts);
    return List.copyOf(verdicts);
  }

  /** The same for a dose in the clinic, where a signed rule may let a second one follow. */
  public static List<Verdict> askInClinic(Question question) {
    List<Verdict> verdicts = ask(question);
    Optional<Injection> first = SameVisit.firstDose(question);
    if (first.isEmpty()) {
      return verdicts;
    }
    return verdicts.stream()
        .map(verdict -> verdict.rule() == GuardRule.SPACING ? second(first.get()) : verdict)
        .toList();
  }

  private static Verdict second(Injection first) {
    return Verdict.of(
        GuardRule.SAME_VISIT,
        new Fact.Happened("first dose", first.at()),
        Fact.said("drawn", first.drawn()),
        Fact.said("response", first.responseWords()));
  }

  private static void thirdInADay(Question question, List<Verdict> verdicts) {
    List<Injection> day = question.history().within(DAY, question.now());
    if (day.size() < MOST_IN_A_DAY) {
      return;
    }
    Injection oldest = day.get(day.size() - MOST_IN_A_DAY);
    verdicts.add(
        new Verdict(
            GuardRule.THIRD_IN_24_HOURS,
            List.of(new Fact.Happened("the first of the last two", oldest.at())),
            new Clears.At(DAY.after(oldest.at()))));
  }

  private static void spacing(Question question, List<Verdict> verdicts) {
    TimeSpan spacing = question.spacing().value();
    question
        .history()
        .last()
        .filter(last -> spacing.after(last.at()).isAfter(question.now()))
        .ifPresent(last -> verdicts.add(spacingVerdict(last, spacing)));
  }

  private static Verdict spacingVerdict(Injection last, TimeSpan spacing) {
    return new Verdict(
        GuardRule.SPACING,
        List.of(
            new Fact.Happened("last injection", last.at()),
            Fact.said("smallest time between two", spacing)),
        new Clears.At(spacing.after(last.at())));
  }

  /** The clinic's own hours between a PDE5 inhibitor and an injection. */
  private static void tablet(Question question, List<Verdict> verdicts) {
    var hours = question.protocol().limits().pde5Hours();
    TimeSpan wait = TimeSpan.ofHours(hours.value());
    question
        .circumstances()
        .lastTablet()
        .filter(taken -> wait.after(taken).isAfter(question.now()))
        .map(
            taken ->
                new Verdict(
                    GuardRule.PDE5_HOURS,
                    List.of(
                        new Fact.Happened("last tablet", taken),
                        Fact.said("the clinic's own hours between the two", hours.value())),
                    new Clears.At(wait.after(taken))))
        .ifPresent(verdicts::add);
  }

  private static void weeklyCount(Question question, List<Verdict> verdicts) {
    int most = question.inSevenDays().value();
    List<Injection> recent = question.history().within(SEVEN_DAYS, question.now());
    if (recent.size() < most) {
      return;
    }
    Instant clears = SEVEN_DAYS.after(recent.get(recent.size() - most).at());
    verdicts.add(
        new Verdict(
            GuardRule.WEEKLY_COUNT,
            List.of(
                Fact.said("injections in the last 168 hours", recent.size()),
                new Fact.Happened("the last of them", recent.getLast().at()),
                Fact.said("most allowed", most)),
            new Clears.At(clears)));
  }
}
