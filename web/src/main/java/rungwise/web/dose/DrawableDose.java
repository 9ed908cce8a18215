package rungwise.web.dose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.DrawingError;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.VerdictLine;

/**
 * A dose that can be drawn, with what to know about it.
 *
 * @param markWords how a reader finds the line
 * @param notices what was understood differently from what was typed
 * @param errors what the content may differ by
 * @param smallest the syringe on which it is best read
 * @param finer the same on that syringe, if it is another
 */
public record DrawableDose(
    DoseLines dose,
    Optional<String> picture,
    Optional<String> markWords,
    List<String> notices,
    List<VerdictLine> verdicts,
    List<Part> errors,
    String worstCase,
    String smallest,
    Optional<DoseLink> finer) {

  /** One part of the error budget, or what its masses are of. */
  public record Part(String what, String size, String source) {}

  private static final String UP_TO = "up to ";

  public DrawableDose {
    notices = List.copyOf(notices);
    verdicts = List.copyOf(verdicts);
    errors = List.copyOf(errors);
  }

  /** What is true of every dose. */
  public List<String> always() {
    return DoseAnswer.ALWAYS;
  }

  static DrawableDose of(DoseForm form, DoseAnswer answer) {
    Dose dose = answer.dose();
    Barrel best = answer.smallest();
    boolean isBest = best.equals(dose.barrel());
    return new DrawableDose(
        DoseLines.of(dose),
        DosePicture.svg(dose, "answer"),
        DosePicture.markWords(dose),
        answer.notices(),
        answer.verdicts().stream().map(DrawableDose::line).toList(),
        Stream.concat(errors(answer.error()).stream(), salts(dose)).toList(),
        UP_TO + answer.error().totalPercentWords(),
        isBest
            ? "This is the smallest syringe that has a line there: it is best read here."
            : "The smallest syringe that has a line there is a "
                + best
                + ": it is best read there.",
        isBest
            ? Optional.empty()
            : Optional.of(DoseLink.volumeOn(form, dose.volume(), best, "Show it on a " + best)));
  }

  private static VerdictLine line(Verdict verdict) {
    boolean isHold = verdict.rule().guardClass() == GuardClass.HOLD;
    return new VerdictLine(
        isHold ? VerdictLine.Kind.HOLD : VerdictLine.Kind.NOTE,
        DoseAnswer.words(verdict),
        verdict.source().words());
  }

  private static List<Part> errors(DrawingError error) {
    var label = DrawingError.LABEL_TOLERANCE_PERCENT;
    var parts = new ArrayList<Part>();
    parts.add(
        new Part(
            "Reading the line",
            UP_TO + error.readingPercentWords(),
            "half the distance between two lines"));
    parts.add(
        new Part(
            "Tolerance of the syringe",
            UP_TO + error.tolerancePercentWords(),
            DrawingError.TOLERANCE_SOURCE.words()));
    parts.add(
        new Part(
            "Worst case of the drawing",
            UP_TO + error.totalPercentWords(),
            "both of the above, the same way"));
    parts.add(
        new Part(
            "Strength against the label",
            UP_TO + label.value() + " percent either way, of a compounded product",
            label.source().words()));
    return parts;
  }

  private static Stream<Part> salts(Dose dose) {
    return dose.preparation().ingredients().stream()
        .map(Ingredient::component)
        .filter(component -> component.saltBasis().isPresent())
        .map(DrawableDose::salt);
  }

  private static Part salt(Component component) {
    return new Part(
        "Mass of " + component.token(),
        "of the salt, " + component.fullName(),
        component.saltBasis().orElseThrow().source().words());
  }
}
