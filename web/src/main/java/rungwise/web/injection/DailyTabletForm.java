package rungwise.web.injection;

import java.util.List;
import rungwise.clinic.standing.CourseChanges;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/** Whether he may go on with a daily low dose of tadalafil: a prescriber's written decision. */
public record DailyTabletForm(Choice allowed, Field reason) {

  public static final String ALLOWED = "allowed";
  public static final String REASON = "dailyReason";

  private static final String NO = "false";
  private static final String YES = "true";

  /** The form that nobody has filled in: neither answer is preset. */
  public static DailyTabletForm empty() {
    return new DailyTabletForm(
        Choice.of(
            ALLOWED,
            "A daily low dose of tadalafil",
            List.of(
                new Option(YES, "he may go on with it", "", false),
                new Option(NO, "he may not", "", false))),
        Field.of(Field.Kind.TEXT, REASON, "Why"));
  }

  /** What was typed into it. */
  public static DailyTabletForm of(Typed typed, Faults faults) {
    DailyTabletForm empty = empty();
    return new DailyTabletForm(
        empty.allowed.asTyped(typed).withFaults(faults),
        empty.reason.asTyped(typed).withFaults(faults));
  }

  /** The field of the page that a fault belongs to. */
  public static String fieldOf(String field) {
    return field.equals(CourseChanges.REASON) ? REASON : field;
  }

  /** Whether one of the two answers was given. */
  public static boolean isAnswered(Typed typed) {
    return typed.has(ALLOWED, YES) || typed.has(ALLOWED, NO);
  }

  /** Whether the answer is that he may. */
  public static boolean isAllowed(Typed typed) {
    return typed.has(ALLOWED, YES);
  }
}
