package rungwise.web.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.clinic.dose.DoseReply;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Volume;
import rungwise.web.page.VerdictLine;

/**
 * Why what was asked for is no dose.
 *
 * @param headline in a few words, the largest on the page
 * @param sentence what was asked for and what there is; may be empty
 * @param verdicts the rules that no signature opens
 * @param links what could be asked for instead
 */
public record RefusedDose(
    String headline, String sentence, List<VerdictLine> verdicts, List<DoseLink> links) {

  private static final String NO_LINE = "No line stands there";
  private static final String FORBIDDEN = "This is not a dose to order";
  private static final String UNFIT = "This cannot be asked";

  public RefusedDose {
    verdicts = List.copyOf(verdicts);
    links = List.copyOf(links);
  }

  static Optional<RefusedDose> of(DoseForm form, DoseReply reply) {
    return switch (reply) {
      case DoseReply.Drawable drawable -> Optional.empty();
      case DoseReply.Unfit unfit ->
          Optional.of(new RefusedDose(UNFIT, unfit.fault(), List.of(), List.of()));
      case DoseReply.Forbidden forbidden ->
          Optional.of(
              new RefusedDose(
                  FORBIDDEN,
                  forbidden.dose().toString(),
                  forbidden.verdicts().stream().map(RefusedDose::line).toList(),
                  List.of()));
      case DoseReply.NoLine none ->
          Optional.of(
              new RefusedDose(
                  NO_LINE, none.sentence() + elsewhere(none), List.of(), links(form, none)));
    };
  }

  private static VerdictLine line(Verdict verdict) {
    return new VerdictLine(
        VerdictLine.Kind.HARD_STOP, DoseAnswer.words(verdict), verdict.source().words());
  }

  private static String elsewhere(DoseReply.NoLine none) {
    return none.others().isEmpty()
        ? " No syringe known here has a line there: ask for another dose or preparation."
        : "";
  }

  private static List<DoseLink> links(DoseForm form, DoseReply.NoLine none) {
    Stream<DoseLink> below = none.below().stream().map(dose -> lower(form, dose));
    Stream<DoseLink> others =
        none.others().stream()
            .map(one -> DoseLink.sameOn(form, one, "The same on a " + one + ", which has a line"));
    return Stream.concat(below, others).toList();
  }

  private static DoseLink lower(DoseForm form, Dose dose) {
    Volume volume = dose.volume();
    Barrel barrel = dose.barrel();
    String words = "The next lower line: " + dose.volumeAndMark() + ", " + dose.content();
    return DoseLink.volumeOn(form, volume, barrel, words);
  }
}
