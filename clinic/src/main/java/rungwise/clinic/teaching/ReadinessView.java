package rungwise.clinic.teaching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Readiness;

/**
 * What must be on record before a man injects at home, in words, for the preparation of his plan.
 *
 * @param answer whether he is ready
 * @param verdicts what the safety checks say against home use, whatever the dose
 * @param items everything that his preparation asks for
 */
public record ReadinessView(String answer, List<VerdictText> verdicts, List<Item> items) {

  /**
   * One thing that home use needs.
   *
   * @param token its name
   * @param isPlan whether it is the emergency plan, which has lines of its own
   * @param records every record of it, the last one first
   * @param gap why no record of it counts today, in words; empty if one does or there is none
   */
  public record Item(String token, String words, boolean isPlan, List<Line> records, String gap) {
    public Item {
      records = List.copyOf(records);
    }

    /** Whether a record of it counts today. */
    public boolean isOnRecord() {
      return !records.isEmpty() && gap.isEmpty();
    }
  }

  /**
   * One record.
   *
   * @param plan the emergency plan in a line; may be empty
   * @param note may be empty
   */
  public record Line(String day, String plan, String note, String by) {}

  public ReadinessView {
    verdicts = List.copyOf(verdicts);
    items = List.copyOf(items);
  }

  /** What stands between a course at its instant, on that day of the clinic, and home use. */
  public static ReadinessView of(CourseState state, LocalDate today, CourseView course) {
    Set<Readiness> needed = Readiness.neededFor(state.question().preparation());
    List<Item> items =
        Arrays.stream(Readiness.values())
            .filter(needed::contains)
            .map(item -> item(item, state, today, course))
            .toList();
    List<VerdictText> verdicts =
        CourseGuards.askForHome(state.question()).stream()
            .map(verdict -> text(verdict, items))
            .toList();
    return new ReadinessView(answer(state, verdicts), verdicts, items);
  }

  /** Some of it counts for a time only. */
  private static String answer(CourseState state, List<VerdictText> verdicts) {
    if (!verdicts.isEmpty()) {
      return "Not ready for home";
    }
    return state.clock().isKnown()
        ? "Ready for home"
        : "Not known whether he is ready for home: it is not known what time it is";
  }

  private static Item item(Readiness item, CourseState state, LocalDate today, CourseView course) {
    var lines = new ArrayList<Line>();
    var gap = "";
    for (Written<ReadinessRecorded> written : state.file().inForce(ReadinessRecorded.class)) {
      ReadinessRecorded fact = written.fact();
      if (fact.item() == item) {
        gap = String.join("; ", fact.lacks(state.question().protocol().home(), today));
        lines.add(
            new Line(
                ClinicTime.words(fact.day()),
                fact.plan().map(EmergencyPlan::words).orElse(""),
                fact.note(),
                course.entry(written.entry().number()).by()));
      }
    }
    Collections.reverse(lines);
    boolean counts = state.question().readiness().contains(item);
    return new Item(
        item.name(), item.words(), item == Readiness.EMERGENCY_PLAN, lines, counts ? "" : gap);
  }

  private static VerdictText text(Verdict verdict, List<Item> items) {
    GuardRule rule = verdict.rule();
    return new VerdictText(
        rule,
        rule.guardClass(),
        rule == GuardRule.HOME_NOT_READY ? missing(items) : rule.wording(),
        next(rule),
        List.of(),
        verdict.source().words());
  }

  private static String missing(List<Item> items) {
    List<String> words =
        items.stream()
            .filter(item -> !item.isOnRecord())
            .map(item -> item.words() + (item.gap().isEmpty() ? "" : " (" + item.gap() + ")"))
            .toList();
    return words.size()
        + " of "
        + items.size()
        + " not on record: "
        + String.join("; ", words)
        + ".";
  }

  private static String next(GuardRule rule) {
    return switch (rule.clears()) {
      case Clears.When when -> "Clears when " + when.act() + ".";
      case Clears.At at -> "";
      case Clears.Never never -> "";
    };
  }
}
