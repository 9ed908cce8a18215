package rungwise.web.beside;

import java.util.List;
import java.util.Set;
import rungwise.clinic.course.Plan;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/** The form that chooses another preparation, syringe or protocol. */
public record PlanForm(Choice preparation, Choice barrel, Choice protocol, Field reason) {

  static final String REASON = "planReason";

  static PlanForm of(Plan now, StartChoices choices) {
    return new PlanForm(
        pick(
            "preparation",
            "Preparation",
            choices.preparations().get().stream()
                .map(one -> new Option(one.id().value(), one.name(), one.composition(), false))
                .toList(),
            now.preparation().value()),
        pick(
            "barrel",
            "Syringe",
            choices.barrels().get().stream()
                .map(barrel -> new Option(barrel.token(), barrel.words(), "", false))
                .toList(),
            now.barrel()),
        pick(
            "protocol",
            "Titration protocol",
            choices.protocols().get().stream()
                .map(signed -> signed.protocol())
                .map(one -> new Option(one.key(), one.title(), "version " + one.version(), false))
                .toList(),
            now.protocol() + " version " + now.protocolVersion()),
        Field.of(Field.Kind.TEXT, REASON, "Why")
            .withHint("Needed for another preparation.")
            .whereSaid());
  }

  PlanForm asTyped(Typed typed) {
    return new PlanForm(
        preparation.asTyped(typed),
        barrel.asTyped(typed),
        protocol.asTyped(typed),
        reason.asTyped(typed));
  }

  PlanForm withFaults(Faults faults) {
    return new PlanForm(
        preparation.withFaults(faults),
        barrel.withFaults(faults),
        protocol.withFaults(faults),
        reason.withFaults(faults));
  }

  private static Choice pick(String name, String label, List<Option> options, String picked) {
    List<Option> shown =
        options.isEmpty() ? List.of(new Option("", "none yet", "", false)) : options;
    return Choice.of(name, label, shown).withPicked(Set.of(picked));
  }
}
