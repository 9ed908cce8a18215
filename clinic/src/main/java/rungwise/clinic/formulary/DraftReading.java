package rungwise.clinic.formulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.UsualStrengths;
import rungwise.dosing.supply.InUseRule;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Reads one draft and collects every fault of it. */
final class DraftReading {

  private static final int LONGEST_WORDS = 100;
  private static final Pattern ONE_LINE = Pattern.compile("[^\\p{C}]*");

  private final PreparationDraft draft;
  private final List<Fault> faults = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();

  private DraftReading(PreparationDraft draft) {
    this.draft = draft;
  }

  static Reading<ClinicPreparation> read(
      PreparationDraft draft, PreparationId id, Optional<PreparationId> replaces) {
    return new DraftReading(draft).read(id, replaces);
  }

  private Reading<ClinicPreparation> read(PreparationId id, Optional<PreparationId> replaces) {
    String name = words("The name", Preparation.NAME, draft.name());
    String preservative =
        words("The preservative", PreparationDraft.PRESERVATIVE, draft.preservative());
    Optional<Form> form = form();
    List<Optional<Ingredient>> rows =
        draft.ingredients().stream().filter(row -> !row.isBlank()).map(this::ingredient).toList();
    List<Ingredient> ingredients = rows.stream().flatMap(Optional::stream).toList();
    Optional<Volume> ceiling = volume("The maximum volume", Preparation.CEILING, draft.ceiling());
    Optional<InUseRule> inUse = inUse(preservative);
    boolean isWhole = ingredients.size() == rows.size() && ceiling.isPresent();
    if (isWhole) {
      faults.addAll(Preparation.faultsOf(name, ingredients, ceiling.orElseThrow()));
    } else if (name.isBlank()) {
      faults.add(
          new Fault(
              Preparation.NAME,
              "The name is missing: enter what the clinic calls this preparation."));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var preparation =
        new Preparation(
            id,
            name,
            form.orElseThrow(),
            ingredients,
            ceiling.orElseThrow(),
            Optional.of(preservative).filter(words -> !words.isEmpty()));
    return new Reading.Read<>(
        new ClinicPreparation(preparation, inUse.orElseThrow(), replaces), notices);
  }

  private String words(String what, String field, String typed) {
    String text = typed.strip();
    if (text.length() > LONGEST_WORDS || !ONE_LINE.matcher(text).matches()) {
      faults.add(
          new Fault(field, what + " cannot be used: write at most 100 characters on one line."));
    }
    return text;
  }

  private <T> Optional<T> taken(String what, String field, Reading<T> reading) {
    reading.faults().forEach(fault -> faults.add(new Fault(field, what + ": " + fault)));
    reading.notices().forEach(notice -> notices.add(what + ": " + notice));
    return reading.found();
  }

  private Optional<Volume> volume(String what, String field, String typed) {
    return taken(what, field, Volume.parseMillilitres(typed));
  }

  private Optional<Form> form() {
    return switch (draft.form()) {
      case "solution" -> Optional.of(new Form.Solution());
      case "powder" -> powder();
      case "prefilled" ->
          volume("The fill of the syringe", PreparationDraft.FILL, draft.fill())
              .map(Form.Prefilled::new);
      case "cartridge" ->
          volume("The fill of the cartridge", PreparationDraft.FILL, draft.fill())
              .map(Form.Cartridge::new);
      default -> {
        faults.add(
            new Fault(
                PreparationDraft.FORM,
                "The form was not chosen: choose solution, powder, prefilled or cartridge."));
        yield Optional.empty();
      }
    };
  }

  private Optional<Form> powder() {
    Optional<Volume> diluent =
        volume("The volume that dissolves it", PreparationDraft.DILUENT, draft.diluent());
    Optional<TimeSpan> usableFor =
        taken(
                "The hours of use once dissolved",
                PreparationDraft.USABLE_HOURS,
                WholeNumber.read(draft.usableHours()))
            .map(TimeSpan::ofHours);
    return diluent.flatMap(volume -> usableFor.map(time -> new Form.Powder(volume, time)));
  }

  private Optional<Ingredient> ingredient(IngredientDraft row) {
    Optional<Component> component = Component.of(row.component().strip());
    if (component.isEmpty()) {
      faults.add(
          new Fault(
              Preparation.COMPONENTS,
              row.component().isBlank()
                  ? "A strength was entered without a component: choose the component."
                  : "\""
                      + row.component().strip()
                      + "\" is not a known component: choose from the list."));
      return Optional.empty();
    }
    Component known = component.get();
    Optional<Concentration> strength =
        taken(
            "The strength of " + known.token(),
            PreparationDraft.strengthOf(known),
            Concentration.parsePerMillilitre(known.unit(), row.strength()));
    strength.ifPresent(per -> requireTwice(known, per, row.again()));
    boolean hasLimit = !row.limit().isBlank();
    Optional<Mass> limit =
        hasLimit
            ? taken(
                "The limit of " + known.token(),
                PreparationDraft.limitOf(known),
                mass(known, row.limit()))
            : Optional.empty();
    return strength
        .filter(per -> limit.isPresent() || !hasLimit)
        .map(per -> new Ingredient(known, per, limit));
  }

  /** A strength far outside the usual ones is typed twice, each time read from the label. */
  private void requireTwice(Component component, Concentration first, String again) {
    Optional<String> unusual = UsualStrengths.notice(component, first);
    if (unusual.isEmpty()) {
      return;
    }
    String what = "The strength of " + component.token() + " again: ";
    String field = PreparationDraft.againOf(component);
    if (again.isBlank()) {
      faults.add(
          new Fault(field, what + unusual.get() + " If it is right, type it a second time."));
      return;
    }
    taken(
            "The strength of " + component.token() + " again",
            field,
            Concentration.parsePerMillilitre(component.unit(), again))
        .filter(second -> !second.equals(first))
        .ifPresent(
            second -> faults.add(new Fault(field, what + notTheSame(component, first, second))));
  }

  private static String notTheSame(Component component, Concentration first, Concentration second) {
    return "it was typed as "
        + first.in(component.unit())
        + " and then as "
        + second.in(component.unit())
        + ": read the label once more and type the same both times.";
  }

  private static Reading<Mass> mass(Component component, String typed) {
    return switch (component.unit()) {
      case MICROGRAM -> Mass.parseMicrograms(typed);
      case MILLIGRAM -> Mass.parseMilligrams(typed);
    };
  }

  private Optional<InUseRule> inUse(String preservative) {
    Reading<InUseRule> reading =
        InUseReading.read(draft.inUse(), draft.inUseDays(), !preservative.isEmpty());
    faults.addAll(reading.placed());
    notices.addAll(reading.notices());
    return reading.found();
  }
}
