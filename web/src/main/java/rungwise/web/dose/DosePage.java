package rungwise.web.dose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.dose.DoseReply;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The dose page: the question, and above it what there is to say.
 *
 * @param isSample whether published samples are offered because the clinic keeps none
 * @param answer a dose that can be drawn
 * @param refusal why there is none
 */
public record DosePage(
    Faults faults,
    boolean isSample,
    Choice preparation,
    Choice barrel,
    Choice by,
    Field amount,
    Optional<DrawableDose> answer,
    Optional<RefusedDose> refusal) {

  private static final Option NOTHING_CHOSEN = new Option("", "choose", "", false);

  static DosePage of(
      DoseForm form, List<Preparation> offered, boolean isSample, DoseForm.Outcome outcome) {
    Faults faults = outcome.faults();
    return new DosePage(
        faults,
        isSample,
        choice(DoseForm.PREPARATION, "Preparation", preparations(offered, isSample), form)
            .withHint("Compare the composition with the label in your hand.")
            .withFaults(faults),
        choice(DoseForm.BARREL, "Syringe", barrels(), form).withFaults(faults),
        choice(DoseForm.BY, "What the number is", meanings(), form).withFaults(faults),
        Field.of(Field.Kind.AMOUNT, DoseForm.AMOUNT, "The number")
            .withHint("Such as 0.2 for a volume, 20 for a line, 2.5 for a content")
            .withValue(form.said(DoseForm.AMOUNT))
            .withFaults(faults),
        outcome.reply().flatMap(reply -> answer(form, reply)),
        outcome.reply().flatMap(reply -> RefusedDose.of(form, reply)));
  }

  private static Optional<DrawableDose> answer(DoseForm form, DoseReply reply) {
    return reply.reading().found().map(found -> DrawableDose.of(form, found));
  }

  /** Nothing is chosen for anybody: the first option of each list is none. */
  private static Choice choice(String name, String label, Stream<Option> options, DoseForm form) {
    return Choice.of(name, label, Stream.concat(Stream.of(NOTHING_CHOSEN), options).toList())
        .withPicked(Set.of(form.said(name)));
  }

  private static Stream<Option> preparations(List<Preparation> offered, boolean isSample) {
    String kind = isSample ? "Sample: " : "";
    return offered.stream()
        .map(
            one ->
                new Option(
                    one.id().value(), kind + one.name() + ": " + one.composition(), "", false));
  }

  private static Stream<Option> barrels() {
    return DoseForm.barrels().stream().map(one -> new Option(one.token(), one.words(), "", false));
  }

  private static Stream<Option> meanings() {
    var options = new ArrayList<Option>();
    options.add(new Option(DoseForm.BY_VOLUME, "a volume, in mL", "", false));
    options.add(new Option(DoseForm.BY_MARK, "a line of a U-100 syringe", "", false));
    Arrays.stream(Component.values())
        .map(one -> new Option(one.token(), contentWords(one), "", false))
        .forEach(options::add);
    return options.stream();
  }

  private static String contentWords(Component component) {
    return "a content of " + component.fullName() + ", in " + component.unit().word();
  }
}
