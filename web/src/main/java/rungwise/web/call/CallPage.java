package rungwise.web.call;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.call.CallStage;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.Start;
import rungwise.dosing.urgent.Timeline;
import rungwise.quantities.Reading;
import rungwise.web.callbook.DepartmentLine;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * A call with nobody's record opened.
 *
 * @param view which instruction stands first
 * @param counted when it began and how long ago; empty where nobody said or knows
 */
public record CallPage(
    Choice day,
    Field at,
    Choice firm,
    Instruction view,
    Optional<Counted> counted,
    Ticking ticking,
    RescueInPage rescue,
    List<DepartmentLine> departments,
    Faults faults) {

  static CallPage of(
      CallForm form,
      Ticking ticking,
      RescueInPage rescue,
      List<DepartmentLine> departments,
      ClinicTime time) {
    Reading<Optional<Instant>> start = form.start(time, ticking.now());
    var faults = new Faults(start.placed());
    Optional<Instant> known = start.found().flatMap(found -> found);
    Optional<Counted> counted =
        known.filter(at -> !ticking.isWrong()).map(at -> Counted.of(at, ticking.now(), time));
    return new CallPage(
        day(form),
        at(form).withFaults(faults),
        firm(form),
        view(form, known, faults, ticking),
        counted,
        ticking,
        rescue,
        departments,
        faults);
  }

  private static Instruction view(
      CallForm form, Optional<Instant> start, Faults faults, Ticking ticking) {
    if (!form.saysStart() || !faults.isEmpty()) {
      return Instruction.NOTHING_SAID;
    }
    Start said =
        start
            .<Start>map(at -> Start.Said.at(at, Speaker.HE))
            .orElseGet(() -> new Start.NotKnown(Optional.empty()));
    Elapsed elapsed =
        ticking.isWrong()
            ? new Elapsed.Unknown(Optional.empty())
            : new Timeline(List.of(said)).elapsed(ticking.now());
    return Instruction.of(CallStage.of(elapsed), form.isSoft());
  }

  private static Choice day(CallForm form) {
    return Choice.of(
            CallForm.DAY,
            "Day",
            List.of(
                new Option(CallForm.TODAY, "Today", "", /* picked= */ true),
                new Option(CallForm.YESTERDAY, "Yesterday", "", /* picked= */ false)))
        .withPicked(
            Set.of(
                form.text(CallForm.DAY).equals(CallForm.YESTERDAY)
                    ? CallForm.YESTERDAY
                    : CallForm.TODAY));
  }

  private static Field at(CallForm form) {
    return Field.of(Field.Kind.COUNT, CallForm.AT, "He injected, or it became firm, at")
        .withHint("Hours and minutes, such as 19:50. Of two times the earlier one.")
        .withValue(form.text(CallForm.AT));
  }

  private static Choice firm(CallForm form) {
    return Choice.of(
            CallForm.FIRM,
            "Still firm?",
            List.of(
                new Option(CallForm.YES, "Yes, or not known", "", /* picked= */ true),
                new Option(CallForm.SOFT, "No, fully soft", "", /* picked= */ false)))
        .withPicked(Set.of(form.isSoft() ? CallForm.SOFT : CallForm.YES));
  }
}
