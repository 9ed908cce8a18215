package rungwise.clinic.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DrawingError;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Reading;

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

  /** True of every answer of this verb. */
  public static final List<String> ALWAYS =
      List.of(
          "A syringe's numbers measure volume, not medicine.",
          "Compare the composition with the label. No safety checks of a patient were made.");

  public DoseAnswer {
    notices = List.copyOf(notices);
    verdicts = List.copyOf(verdicts);
  }

  /** The answer, or the rules that no signature opens. */
  static Reading<DoseAnswer> of(Dose dose, Optional<ExactVolume> exact, List<String> notices) {
    List<Verdict> verdicts = DoseGuards.askWithoutCourse(dose);
    List<String> faults =
        verdicts.stream()
            .filter(Verdict::isHardStop)
            .map(verdict -> dose.volumeAndMark() + " is not a dose to order. " + words(verdict))
            .toList();
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return Reading.of(
        new DoseAnswer(
            dose,
            exact,
            DrawingError.of(dose.volume(), dose.barrel()).orElseThrow(),
            Barrels.smallestFor(dose.volume(), Barrels.all()).orElseThrow(),
            notices,
            verdicts));
  }

  private static String words(Verdict verdict) {
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
