package rungwise.web.dose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DrawingError;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.VerdictLine;

/**
 * The dose page.
 *
 * @param isSample whether published samples are offered because the clinic keeps none
 * @param answer what was asked for, if it can be drawn
 */
public record DosePage(
    Faults faults,
    boolean isSample,
    Choice preparation,
    Choice barrel,
    Choice by,
    Field amount,
    Optional<Answer> answer) {

  /**
   * A dose that can be drawn, with what to know about it.
   *
   * @param smallest the syringe on which it is best read
   */
  public record Answer(
      DoseLines dose,
      Optional<String> picture,
      List<String> notices,
      List<VerdictLine> verdicts,
      List<Part> errors,
      String smallest,
      List<String> always) {
    public Answer {
      notices = List.copyOf(notices);
      verdicts = List.copyOf(verdicts);
      errors = List.copyOf(errors);
      always = List.copyOf(always);
    }
  }

  /** One part of the error budget. */
  public record Part(String what, String size, String source) {}

  private static final String VOLUME = "volume";
  private static final String MARK = "mark";
  private static final String HALF_A_LINE = "half the distance between two lines";

  static DosePage of(
      DoseForm form,
      List<Preparation> offered,
      boolean isSample,
      Optional<DoseAnswer> answer,
      List<String> faults) {
    return new DosePage(
        new Faults(faults.stream().map(Fault::ofForm).toList()),
        isSample,
        preparations(offered, form.preparationId()),
        barrels(form.barrelToken()),
        by(form.askedBy()),
        Field.of(Field.Kind.AMOUNT, "amount", "The number").withValue(form.typedAmount()),
        answer.map(DosePage::answerOf));
  }

  private static Choice preparations(List<Preparation> offered, String picked) {
    List<Option> options =
        offered.stream()
            .map(
                one ->
                    new Option(one.id().value(), one.name() + ": " + one.composition(), "", false))
            .toList();
    return Choice.of("preparation", "Preparation", options).withPicked(Set.of(picked));
  }

  private static Choice barrels(String picked) {
    List<Option> options =
        Barrels.all().stream()
            .filter(one -> one.marking().graduationVolume().isPresent())
            .map(one -> new Option(one.token(), one.words(), "", false))
            .toList();
    return Choice.of("barrel", "Syringe", options).withPicked(Set.of(picked));
  }

  private static Choice by(String picked) {
    var options = new ArrayList<Option>();
    options.add(new Option(VOLUME, "a volume, in mL", "", false));
    options.add(new Option(MARK, "a line of a U-100 syringe", "", false));
    Arrays.stream(Component.values())
        .map(
            one ->
                new Option(
                    one.token(),
                    "a content of " + one.fullName() + ", in " + one.unit().word(),
                    "",
                    false))
        .forEach(options::add);
    return Choice.of("by", "What the number is", options)
        .withPicked(Set.of(picked.isEmpty() ? VOLUME : picked));
  }

  private static Answer answerOf(DoseAnswer answer) {
    Dose dose = answer.dose();
    return new Answer(
        DoseLines.of(dose),
        DosePicture.svg(dose, "answer"),
        answer.notices(),
        answer.verdicts().stream().map(DosePage::line).toList(),
        errors(answer),
        smallest(answer, dose.barrel()),
        DoseAnswer.ALWAYS);
  }

  private static String smallest(DoseAnswer answer, Barrel barrel) {
    return answer.smallest().equals(barrel)
        ? "This is the syringe on which it is best read."
        : "Best read on a " + answer.smallest() + ".";
  }

  private static VerdictLine line(Verdict verdict) {
    VerdictLine.Kind kind =
        verdict.rule().guardClass() == GuardClass.HOLD
            ? VerdictLine.Kind.HOLD
            : VerdictLine.Kind.NOTE;
    return new VerdictLine(kind, verdict.rule().wording(), verdict.rule().source().words());
  }

  private static List<Part> errors(DoseAnswer answer) {
    DrawingError error = answer.error();
    var parts = new ArrayList<Part>();
    parts.add(new Part("Reading", "up to " + error.readingPercentWords(), HALF_A_LINE));
    parts.add(
        new Part(
            "Syringe",
            "up to " + error.tolerancePercentWords(),
            DrawingError.TOLERANCE_SOURCE.words()));
    parts.add(
        new Part("Both the same way", "up to " + error.totalPercentWords(), "the worst case"));
    parts.add(
        new Part(
            "Strength on the label",
            "up to " + DrawingError.LABEL_TOLERANCE_PERCENT.value() + " percent",
            DrawingError.LABEL_TOLERANCE_PERCENT.source().words()));
    answer.dose().preparation().ingredients().stream()
        .map(Ingredient::component)
        .filter(component -> component.saltBasis().isPresent())
        .map(
            component ->
                new Part(
                    "Salt",
                    "masses of " + component.token() + " are of " + component.fullName(),
                    component.saltBasis().orElseThrow().source().words()))
        .forEach(parts::add);
    return parts;
  }
}
