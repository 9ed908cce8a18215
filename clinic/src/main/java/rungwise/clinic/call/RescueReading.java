package rungwise.clinic.call;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.OutsideText;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.rescue.RescueWord.Given;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.Refusal;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Reads what was given and measured in a rescue; every fault goes to its field. */
final class RescueReading {

  private static final int LONGEST_NAME = 200;

  private final StandingPorts ports;
  private final RescueDraft draft;
  private final Instant now;
  private final RescueFields fields;

  RescueReading(StandingPorts ports, RescueDraft draft, Instant now, RescueFields fields) {
    this.ports = ports;
    this.draft = draft;
    this.now = now;
    this.fields = fields;
  }

  /** Without a clock time it is now. */
  Optional<Instant> at() {
    String clock = draft.text(RescueDraft.TIME);
    String date = draft.text(RescueDraft.DATE);
    if (clock.isEmpty() && date.isEmpty()) {
      return Optional.of(now);
    }
    Reading<Instant> read =
        date.isEmpty()
            ? new SaidTime(draft.text(RescueDraft.DAY), clock)
                .happened(ports.time(), ports.present(now))
            : ports.time().read(date, clock, Occurrence.SECOND);
    read.placed().forEach(fields::add);
    Optional<Instant> future = read.found().filter(ports.present(now)::isStillToCome);
    if (future.isPresent()) {
      fields.add(
          new Fault(
              ClinicTime.TIME_FIELD,
              ports.time().words(future.get())
                  + " is still to come: write when it was, or another day."));
    }
    return read.found();
  }

  /** Blood pressure and pulse, all or none. */
  Optional<Vitals> vitals() {
    Reading<Optional<Vitals>> read =
        Vitals.read(
            draft.text(RescueDraft.SYSTOLIC),
            draft.text(RescueDraft.DIASTOLIC),
            draft.text(RescueDraft.PULSE));
    read.at(RescueDraft.SYSTOLIC).placed().forEach(fields::add);
    return read.found().flatMap(found -> found);
  }

  /** The doses that were given, one for each side; none where anything is wrong. */
  List<Given> given(String writer) {
    Optional<Instant> at = at();
    Optional<Vitals> before = vitals();
    Optional<Mass> dose = fields.ifTyped(RescueFields.DOSE, Typed::dose);
    Optional<Concentration> strength =
        fields.ifTyped(RescueFields.STRENGTH, text -> Typed.strength(Asked.IN_SYRINGE, text));
    Optional<Volume> volume =
        draft.text(RescueDraft.VOLUME).isEmpty()
            ? Optional.empty()
            : fields.read(RescueDraft.VOLUME, Volume.parse(draft.text(RescueDraft.VOLUME)));
    Optional<Mass> held = strength.flatMap(of -> volume.map(of::in));
    amount(dose, held);
    Optional<String> second = name(RescueDraft.SECOND, "The second person");
    String giver = name(RescueDraft.GIVEN_BY, "Who gave it").orElse(writer);
    other(giver, second);
    if (!fields.faults().isEmpty()) {
      return List.of();
    }
    return sides().stream()
        .map(
            side ->
                new Given(
                    at.orElseThrow(),
                    dose.or(() -> held),
                    strength,
                    volume,
                    side,
                    before,
                    giver,
                    second))
        .toList();
  }

  /** Two answers that cannot both be true are asked back: a step was left out, or mistyped. */
  private void amount(Optional<Mass> dose, Optional<Mass> held) {
    if (dose.filter(mass -> mass.picograms() == 0).isPresent()) {
      fields.add(List.of(new Refusal.NoDose()));
      return;
    }
    held.filter(mass -> dose.isPresent() && !dose.get().equals(mass))
        .ifPresent(
            mass ->
                fields.add(
                    new Fault(
                        RescueFields.DOSE,
                        draft.text(RescueDraft.VOLUME)
                            + " of "
                            + draft.text(RescueFields.STRENGTH)
                            + " hold "
                            + mass.in(MassUnit.MICROGRAM)
                            + ", and "
                            + dose.orElseThrow().in(MassUnit.MICROGRAM)
                            + " was typed: look at syringe and label, and leave empty what you"
                            + " do not know.")));
  }

  private List<Side> sides() {
    String picked = draft.text(RescueDraft.SIDE);
    return picked.equals(RescueDraft.EACH)
        ? List.of(Side.LEFT, Side.RIGHT)
        : List.of(
            Arrays.stream(Side.values())
                .filter(side -> side.name().equals(picked))
                .findFirst()
                .orElse(Side.NOT_KNOWN));
  }

  /** A name that may be left empty. */
  Optional<String> name(String field, String what) {
    String typed = draft.text(field);
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    Reading<String> read = OutsideText.line(what, typed, LONGEST_NAME).at(field);
    read.placed().forEach(fields::add);
    return read.found();
  }

  /** Nobody checks himself. */
  void other(String giver, Optional<String> second) {
    second
        .filter(name -> name.equalsIgnoreCase(giver))
        .ifPresent(
            name ->
                fields.add(
                    new Fault(
                        RescueDraft.SECOND,
                        name
                            + " cannot be the second person too: write who else has read label"
                            + " and dilution, or leave it empty if nobody has.")));
  }
}
