package rungwise.web.takeover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.coded.ToldBy;
import rungwise.clinic.takeover.ToldDraft;
import rungwise.dosing.history.Grade;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.syringe.Barrel;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/** What he injects elsewhere, as typed. */
public record ToldForm(
    Choice preparation,
    Choice syringe,
    Field dose,
    Field from,
    Field lastDay,
    Choice grade,
    Choice end,
    Field minutes,
    Choice by) {

  /** Everything in the order of the page. */
  static final List<String> FIELDS =
      List.of(
          ToldDraft.PREPARATION,
          ToldDraft.SYRINGE,
          ToldDraft.DOSE,
          ToldDraft.FROM,
          ToldDraft.LAST_DAY,
          ToldDraft.GRADE,
          ToldDraft.END,
          ToldDraft.MINUTES,
          ToldDraft.BY);

  static ToldForm of(
      List<Preparation> preparations, List<Barrel> barrels, Typed typed, Faults faults) {
    return new ToldForm(
        choice(
                ToldDraft.PREPARATION,
                "What he injects there",
                preparations.stream()
                    .map(one -> new Option(one.id().value(), one.name(), one.composition(), false))
                    .toList(),
                typed,
                faults)
            .withHint("By its composition. What is not here is entered as a preparation first."),
        choice(ToldDraft.SYRINGE, "How the dose is told", syringes(barrels), typed, faults),
        field(Field.Kind.AMOUNT, ToldDraft.DOSE, "Dose, as told", typed, faults)
            .withHint("The line of that syringe, or the volume in mL, such as 0.25."),
        field(Field.Kind.TEXT, ToldDraft.FROM, "Where he is treated", typed, faults),
        field(Field.Kind.DATE, ToldDraft.LAST_DAY, "Day of his last injection there", typed, faults)
            .withHint("Empty if nobody knows: then nothing is injected here before it is asked.")
            .optional(),
        choice(ToldDraft.GRADE, "How firm with this dose", grades(), typed, faults),
        choice(ToldDraft.END, "How long it lasts", ends(), typed, faults),
        field(Field.Kind.COUNT, ToldDraft.MINUTES, "Minutes", typed, faults)
            .withHint("The longest that was told; empty if it is not known.")
            .whereSaid(),
        choice(ToldDraft.BY, "Known from", options(ToldBy.values(), ToldBy::words), typed, faults));
  }

  private static Field field(
      Field.Kind kind, String name, String label, Typed typed, Faults faults) {
    return Field.of(kind, name, label).asTyped(typed).withFaults(faults);
  }

  private static List<Option> grades() {
    return Arrays.stream(Grade.values())
        .map(one -> option(Integer.toString(one.number()), one.words()))
        .toList();
  }

  private static List<Option> ends() {
    return options(ToldDraft.End.values(), ToldDraft.End::words);
  }

  private static List<Option> syringes(List<Barrel> barrels) {
    var all = new ArrayList<Option>();
    all.add(option("", "in mL"));
    barrels.forEach(one -> all.add(option(one.token(), "by a line of a " + one.words())));
    return all;
  }

  private static <E extends Enum<E>> List<Option> options(E[] all, Function<E, String> words) {
    return Stream.of(all).map(one -> option(one.name(), words.apply(one))).toList();
  }

  private static Option option(String value, String words) {
    return new Option(value, words, "", /* picked= */ false);
  }

  private static Choice choice(
      String name, String label, List<Option> options, Typed typed, Faults faults) {
    return Choice.of(name, label, options).withPicked(Set.of("")).asTyped(typed).withFaults(faults);
  }

  static ToldDraft draft(Typed typed) {
    return new ToldDraft(
        typed.text(ToldDraft.PREPARATION),
        typed.text(ToldDraft.DOSE),
        typed.text(ToldDraft.SYRINGE),
        typed.text(ToldDraft.FROM),
        typed.text(ToldDraft.LAST_DAY),
        typed.text(ToldDraft.GRADE),
        typed.text(ToldDraft.END),
        typed.text(ToldDraft.MINUTES),
        typed.text(ToldDraft.BY));
  }
}
