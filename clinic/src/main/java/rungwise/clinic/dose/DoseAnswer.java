package rungwise.clinic.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.ExactVolume;

/**
 * A dose that can be drawn, and what must be known about it.
 *
 * @param exact the exact volume of the content that was asked for, where one was
 * @param notices what was understood differently from what was typed
 * @param verdicts what speaks against it without forbidding it
 */
public record DoseAnswer(
    Dose dose,
    Optional<ExactVolume> exact,
    DrawingError error,
    Barrel smallest,
    List<String> notices,
    List<Verdict> verdicts) {

  /** True of every answer. */
  public static final List<String> ALWAYS =
      List.of(
          "A syringe's numbers measure volume, not medicine.",
          "Compare the composition with the label. No safety checks of a patient were made.");

  public DoseAnswer {
    notices = List.copyOf(notices);
    verdicts = List.copyOf(verdicts);
  }

  /** What is said of a dose that stands on a line. */
  static DoseReply of(Dose dose, Optional<ExactVolume> exact, List<String> notices) {
    List<Verdict> verdicts = DoseGuards.askWithoutCourse(dose);
    List<Verdict> stops = verdicts.stream().filter(Verdict::isHardStop).toList();
    if (!stops.isEmpty()) {
      return new DoseReply.Forbidden(dose, stops);
    }
    return new DoseReply.Drawable(
        new DoseAnswer(
            dose,
            exact,
            DrawingError.of(dose.volume(), dose.barrel()).orElseThrow(),
            Barrels.smallestFor(dose.volume(), Barrels.all()).orElseThrow(),
            notices,
            verdicts));
  }

  /** A verdict with the facts that it read. */
  public static String words(Verdict verdict) {
    return verdict.rule().wording()
        + " ("
        + verdict.facts().stream().map(Fact::toString).collect(Collectors.joining(", "))
        + ")";
  }

  /** What speaks against the dose, in words. */
  public List<String> warnings() {
    return verdicts.stream().map(DoseAnswer::words).toList();
  }
}
