package rungwise.web.call;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.call.RescueDraft;
import rungwise.clinic.call.RescueDraft.What;
import rungwise.clinic.call.RescueFields;
import rungwise.clinic.call.Rescues;
import rungwise.clinic.call.SaidTime;
import rungwise.clinic.rescuing.RescueView;
import rungwise.clinic.rescuing.RescueWords;
import rungwise.clinic.sheet.CallView;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The rescue of a man on record as shown.
 *
 * @param call what is known of him and of the call
 * @param limits where the limits of an hour come from
 * @param held why a dose is held that was asked for
 */
public record CourseRescuePage(
    CallView call,
    RescueView rescue,
    String limits,
    boolean mayWrite,
    Optional<Counted> counted,
    Optional<Held> held,
    Form form,
    List<Field> gas,
    String notice,
    Faults faults) {

  /**
   * A dose that is held.
   *
   * @param token the reasons as the form carries them
   */
  public record Held(List<String> reasons, String token) {
    public Held {
      reasons = List.copyOf(reasons);
    }

    static Held of(LogVerdict.Hold hold, ClinicTime time) {
      return new Held(
          hold.reasons().stream().map(reason -> RescueWords.of(reason, time)).toList(),
          Rescues.token(hold));
    }
  }

  /** The fields of what is given, asked for or measured. */
  public record Form(
      List<Field> dose,
      List<Field> syringe,
      Choice side,
      List<Field> people,
      List<Field> pressure,
      Choice day,
      Field time,
      Field date,
      Field words) {

    static Form of(Typed typed, Faults faults) {
      return new Form(
          twice(RescueFields.DOSE, "Dose", "With its unit, such as 200 mcg", typed, faults),
          List.of(
              field(RescueDraft.VOLUME, "Volume", typed, faults)
                  .withHint("With its unit, such as 2 mL"),
              field(RescueFields.STRENGTH, "Strength in the syringe", typed, faults)
                  .withHint("As its label says, such as 100 mcg/mL")),
          Choice.of(RescueDraft.SIDE, "Into which side", sides()).asTyped(typed).withFaults(faults),
          List.of(
              field(RescueDraft.GIVEN_BY, "Given by", typed, faults).withHint("Empty means you"),
              field(RescueDraft.SECOND, "Second person", typed, faults)
                  .withHint("Who else has read label and dilution")),
          List.of(
              number(RescueDraft.SYSTOLIC, "Systolic", typed, faults),
              number(RescueDraft.DIASTOLIC, "Diastolic", typed, faults),
              number(RescueDraft.PULSE, "Pulse", typed, faults)),
          Choice.of(RescueDraft.DAY, "Day", days()).asTyped(typed),
          field(RescueDraft.TIME, "At", typed, faults)
              .withHint("Hours and minutes, such as 22:15; empty means now"),
          Field.of(Field.Kind.DATE, RescueDraft.DATE, "Or on another day")
              .asTyped(typed)
              .withFaults(faults)
              .whereSaid(),
          field(RescueDraft.WORDS, "Why you go on", typed, faults));
    }

    private static List<Option> days() {
      return List.of(
          new Option(SaidTime.TODAY, "Today", "", /* picked= */ true),
          new Option(SaidTime.YESTERDAY, "Yesterday", "", /* picked= */ false));
    }

    private static List<Option> sides() {
      return List.of(
          new Option(Side.NOT_KNOWN.name(), "Not known", "", /* picked= */ true),
          new Option(Side.LEFT.name(), "His left", "", /* picked= */ false),
          new Option(Side.RIGHT.name(), "His right", "", /* picked= */ false),
          new Option(RescueDraft.EACH, "This much into each side: it counts twice", "", false));
    }
  }

  static CourseRescuePage of(
      CallView call,
      RescueView rescue,
      boolean isSample,
      boolean mayWrite,
      Optional<LogVerdict.Hold> held,
      Typed typed,
      String notice,
      Faults faults,
      Ticking ticking,
      ClinicTime time) {
    return new CourseRescuePage(
        call,
        rescue,
        isSample
            ? "sample: the European guideline, not signed by this clinic"
            : "signed by this clinic",
        mayWrite,
        call.began()
            .filter(at -> !ticking.isWrong() && !at.isAfter(ticking.now()))
            .map(at -> Counted.of(at, ticking.now(), time)),
        held.map(hold -> Held.of(hold, time)),
        Form.of(typed, faults),
        Stream.of(
                twice(RescueFields.OXYGEN, "pO2", "Such as 25 mmHg or 3.3 kPa", typed, faults),
                twice(
                    RescueFields.CARBON_DIOXIDE,
                    "pCO2",
                    "Such as 65 mmHg or 8.7 kPa",
                    typed,
                    faults),
                twice(RescueFields.PH, "pH", "Such as 7.2", typed, faults))
            .flatMap(List::stream)
            .toList(),
        notice,
        faults);
  }

  /** What is needed depends on which of the buttons is pressed. */
  private static Field field(String name, String label, Typed typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label).asTyped(typed).withFaults(faults).whereSaid();
  }

  private static Field number(String name, String label, Typed typed, Faults faults) {
    return Field.of(Field.Kind.COUNT, name, label).asTyped(typed).withFaults(faults).whereSaid();
  }

  /** A field, and beside it the second one where it is asked for or was filled. */
  private static List<Field> twice(
      String name, String label, String hint, Typed typed, Faults faults) {
    Field once = field(name, label, typed, faults).withHint(hint);
    String again = RescueFields.again(name);
    boolean isAsked = !faults.of(again).isEmpty() || !typed.text(again).isEmpty();
    return isAsked
        ? List.of(
            once,
            field(again, label + ", a second time", typed, faults)
                .withHint("Read it anew and type it, not from the field before."))
        : List.of(once);
  }

  /** "3 min": what lies at least between two doses. */
  public String between() {
    return RescueLimits.FLOOR.value().toString();
  }

  /** Where everything is written down. */
  public String path() {
    return callPath() + "/rescue";
  }

  public String callPath() {
    return "/courses/" + call.course() + "/call";
  }

  /** What a form sends. */
  static RescueDraft draft(Typed typed) {
    RescueDraft draft = new RescueDraft(What.of(typed.text(RescueDraft.WHAT)), Map.of());
    for (String field : typed.fields().keySet()) {
      draft = draft.with(field, typed.text(field));
    }
    return draft;
  }
}
