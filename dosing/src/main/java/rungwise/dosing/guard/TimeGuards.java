package rungwise.dosing.guard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

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

  /**
   * The same for a volume at a place, with what was injected within the day. In the clinic a signed
   * rule may let a second dose follow.
   */
  public static List<Verdict> ask(Question question, Volume volume, Place place) {
    var verdicts = new ArrayList<>(ask(question));
    List<Injection> day = around(question);
    if (place == Place.CLINIC && day.size() == 1) {
      verdicts.replaceAll(one -> inClinic(question, volume, day.getFirst(), one));
    }
    verdicts.addAll(Together.ask(question, volume));
    return List.copyOf(verdicts);
  }

  private static Verdict inClinic(
      Question question, Volume volume, Injection first, Verdict verdict) {
    if (verdict.rule() != GuardRule.SPACING) {
      return verdict;
    }
    return SameVisit.lets(question, volume)
        ? second(question, first, volume)
        : tooRecent(question, verdict);
  }

  /** Every injection that counts for the time between two, wherever it was. */
  static List<Injection> counted(Question question) {
    History history = question.history();
    return history.before().elsewhere().with(history.injections());
  }

  /** The injections less than a day from the question's instant, before it or after. */
  static List<Injection> around(Question question) {
    return counted(question).stream()
        .filter(one -> isWithinADay(one.at(), question.now()))
        .toList();
  }

  static boolean isWithinADay(Instant one, Instant other) {
    return DAY.after(one).isAfter(other) && DAY.after(other).isAfter(one);
  }

  private static Verdict second(Question question, Injection first, Volume volume) {
    return Verdict.of(
        GuardRule.SAME_VISIT,
        new Fact.Happened("first dose", first.at()),
        Fact.said("drawn", first.drawn()),
        Fact.said("response", first.responseWords()),
        Fact.said("both together", Together.of(question, volume).words()));
  }

  /** Too recent, with the one step that may follow in this visit, and when. */
  private static Verdict tooRecent(Question question, Verdict spacing) {
    var facts = new ArrayList<>(spacing.facts());
    SameVisit.next(question)
        .ifPresent(
            next -> {
              facts.add(Fact.said("only step that may follow in this visit", next.volume()));
              facts.add(new Fact.Happened("not before", next.from()));
              facts.add(Fact.said("source of the wait", SameVisit.WAIT.source().words()));
            });
    return new Verdict(GuardRule.SPACING, facts, spacing.clears());
  }

  private static void spacing(Question question, List<Verdict> verdicts) {
    var window = new Window(question.spacing().value(), 1);
    full(question, window)
        .ifPresent(
            row ->
                verdicts.add(
                    new Verdict(
                        GuardRule.SPACING,
                        List.of(
                            new Fact.Happened("last injection", row.getLast().at()),
                            Fact.said("smallest time between two", window.span())),
                        free(question, window))));
  }

  private static void thirdInADay(Question question, List<Verdict> verdicts) {
    var window = new Window(DAY, MOST_IN_A_DAY);
    full(question, window)
        .ifPresent(
            row ->
                verdicts.add(
                    new Verdict(
                        GuardRule.THIRD_IN_24_HOURS,
                        List.of(
                            new Fact.Happened("the first of the last two", row.getFirst().at())),
                        free(question, window))));
  }

  private static void weeklyCount(Question question, List<Verdict> verdicts) {
    var window = new Window(SEVEN_DAYS, question.inSevenDays().value());
    full(question, window)
        .ifPresent(
            row ->
                verdicts.add(
                    new Verdict(
                        GuardRule.WEEKLY_COUNT,
                        List.of(
                            new Fact.Happened("the first of them", row.getFirst().at()),
                            new Fact.Happened("the last of them", row.getLast().at()),
                            Fact.said("most allowed", window.most())),
                        free(question, window))));
  }

  private static Optional<List<Injection>> full(Question question, Window window) {
    return window.fullAt(counted(question), question.now());
  }

  private static Clears free(Question question, Window window) {
    return new Clears.At(window.freeFrom(counted(question), question.now()));
  }

  /** The clinic's own hours between a PDE5 inhibitor and an injection. */
  private static void tablet(Question question, List<Verdict> verdicts) {
    var hours = question.protocol().limits().pde5Hours();
    TimeSpan wait = TimeSpan.ofHours(hours.value());
    question
        .circumstances()
        .lastTablet()
        .filter(tablet -> wait.after(tablet.at()).isAfter(question.now()))
        .map(
            tablet ->
                new Verdict(
                    GuardRule.PDE5_HOURS,
                    List.of(
                        new Fact.Which("tablets", tablet.of()),
                        new Fact.Happened("last tablet", tablet.at()),
                        Fact.said("the clinic's own hours between the two", hours.value())),
                    new Clears.At(wait.after(tablet.at()))))
        .ifPresent(verdicts::add);
  }
}
