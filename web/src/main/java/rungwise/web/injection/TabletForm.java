package rungwise.web.injection;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rungwise.clinic.titration.ReportPart;
import rungwise.dosing.known.Tablet;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/** Which tablet for erections he took, and when: asked in the same words wherever it is asked. */
public record TabletForm(Choice tablet, Field date, Field time) {

  /** The form that nobody has filled in. */
  public static TabletForm empty() {
    return of(new InjectionQuestions("", Typed.NOTHING, Faults.NONE), "Which tablet", List.of())
        .withHints("Empty means now.");
  }

  /** What was typed into it. */
  public static TabletForm of(Typed typed, Faults faults) {
    return of(new InjectionQuestions("", typed, faults), "Which tablet", List.of())
        .withHints("Empty means now.");
  }

  /** The same question as a part of a report. */
  public static TabletForm ofReport(InjectionQuestions ask) {
    return of(
            ask,
            "Did he take a tablet for erections?",
            List.of(new Option("", "not asked", "", false), new Option("none", "no", "", false)))
        .withHints("Empty means at the injection.");
  }

  private static TabletForm of(InjectionQuestions ask, String label, List<Option> before) {
    var options = new ArrayList<>(before);
    Arrays.stream(Tablet.values())
        .map(tablet -> new Option(tablet.name(), tablet.words(), "", false))
        .forEach(options::add);
    return new TabletForm(
        ask.choice(ReportPart.TABLET.field(), label, options),
        ask.optional(Field.Kind.DATE, ReportPart.TABLET_DATE.field(), "Day, if another"),
        ask.optional(Field.Kind.TEXT, ReportPart.TABLET_TIME.field(), "When he took it"));
  }

  private TabletForm withHints(String noTime) {
    return new TabletForm(tablet, date, time.withHint("such as 19:30 or 7 pm. " + noTime));
  }
}
