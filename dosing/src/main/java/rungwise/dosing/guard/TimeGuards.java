package rungwise.dosing.guard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Protocol;
import rungwise.quantities.TimeSpan;

/** The guards that ask about an instant. They count instants, so a clock change moves nothing. */
public final class TimeGuards {

  /** "Three in seven days" is a window of 168 hours with the far end open. */
  public static final TimeSpan SEVEN_DAYS = TimeSpan.ofHours(168);

  private TimeGuards() {}

  /** What forbids an injection at the question's instant. */
  public static List<Verdict> ask(Question question) {
    var verdicts = new ArrayList<Verdict>();
    spacing(question, verdicts);
    weeklyCount(question, verdicts);
    return List.copyOf(verdicts);
  }

  private static void spacing(Question question, List<Verdict> verdicts) {
    TimeSpan spacing = question.protocol().limits().spacing().value();
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

  private static void weeklyCount(Question question, List<Verdict> verdicts) {
    Protocol.Limits limits = question.protocol().limits();
    int most = limits.inSevenDays().value();
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
                Fact.said("most allowed", most)),
            new Clears.At(clears)));
  }
}
