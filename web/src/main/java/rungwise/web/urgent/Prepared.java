package rungwise.web.urgent;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.urgent.rescue.DoseVolume;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.dosing.urgent.rescue.Part;
import rungwise.dosing.urgent.rescue.PublishedScheme;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.StrengthWords;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.web.page.DoseLines;

/**
 * How it is prepared, as shown.
 *
 * @param dose the volume of one dose, loudest on the page
 * @param steps what is done, in order
 * @param leftOut what he would get if the second of two steps were left out; may be empty
 * @param sum when the sum of an hour is reached; a dose above it is told too
 * @param label what is written on the syringe
 */
public record Prepared(DoseLines dose, List<Step> steps, String leftOut, String sum, Label label) {

  static final String DRUG = "phenylephrine";

  /**
   * One step.
   *
   * @param draw what is drawn first, volume first
   * @param add what is added; empty where nothing is
   * @param gives what it makes
   * @param isForHim whether that is what is given
   * @param errors how exactly each part is drawn
   */
  public record Step(String draw, String add, String gives, boolean isForHim, List<String> errors) {
    public Step {
      errors = List.copyOf(errors);
    }
  }

  /**
   * The label of the syringe that is given from.
   *
   * @param total the volume in it; empty where the maker's own syringe is used
   */
  public record Label(String strength, String total) {}

  public Prepared {
    steps = List.copyOf(steps);
  }

  static Prepared of(Mixing mixing, DoseVolume.Drawn volume) {
    return new Prepared(
        lines(volume),
        steps(mixing),
        mixing instanceof Mixing.TwoSteps two ? leftOut(two, volume) : "",
        sum(volume.dose(), RescueLimits.SAMPLE.value()),
        new Label(DRUG + " " + StrengthWords.of(volume.of()), total(mixing)));
  }

  private static DoseLines lines(DoseVolume.Drawn volume) {
    Part part = volume.part();
    return new DoseLines(
        part.volume().toString(),
        part.on().markWords(part.volume()),
        DRUG + " " + StrengthWords.of(volume.of()),
        DRUG + " " + volume.dose().in(MassUnit.MICROGRAM));
  }

  private static List<Step> steps(Mixing mixing) {
    return switch (mixing) {
      case Mixing.OneStep one -> List.of(step(one.step(), "the stock, ", /* isForHim= */ true));
      case Mixing.TwoSteps two ->
          List.of(
              step(two.first(), "the stock, ", /* isForHim= */ false),
              step(two.second(), "that, ", /* isForHim= */ true));
      case Mixing.ReadyToUse ready ->
          List.of(
              new Step(
                  "Nothing is diluted. Two people read the label: "
                      + StrengthWords.of(ready.labelled())
                      + ".",
                  "",
                  StrengthWords.of(ready.labelled()) + ", as it is labelled",
                  /* isForHim= */ true,
                  List.of()));
      case Mixing.Refused refused -> List.of();
    };
  }

  private static Step step(Mixing.Step step, String of, boolean isForHim) {
    var errors = new ArrayList<String>();
    for (Part part : List.of(step.stock(), step.saline())) {
      errors.add(
          part.volume()
              + " on a "
              + part.on()
              + ": at worst "
              + part.error().totalPercentWords()
              + " off");
    }
    return new Step(
        "Draw " + step.stock() + " of " + of + StrengthWords.of(step.mix().from()) + ".",
        "Add " + step.saline() + " of saline 0.9 %.",
        step.mix().total() + " of " + StrengthWords.of(step.mix().gives()),
        isForHim,
        errors);
  }

  private static String leftOut(Mixing.TwoSteps two, DoseVolume.Drawn volume) {
    Concentration strong = two.ifSecondIsLeftOut();
    Mass instead = strong.in(volume.part().volume());
    return "If the second step is left out, it holds "
        + StrengthWords.of(strong)
        + ", and "
        + volume.part().volume()
        + " of it is "
        + instead.in(MassUnit.MICROGRAM)
        + " instead of "
        + volume.dose().in(MassUnit.MICROGRAM)
        + ".";
  }

  private static String total(Mixing mixing) {
    return switch (mixing) {
      case Mixing.OneStep one -> one.step().mix().total().toString();
      case Mixing.TwoSteps two -> two.second().mix().total().toString();
      case Mixing.ReadyToUse ready -> "";
      case Mixing.Refused refused -> "";
    };
  }

  private static String sum(Mass dose, RescueLimits limits) {
    String limit =
        limits.inAnHour().in(MassUnit.MICROGRAM)
            + " in an hour (sample: the European guideline, not signed by this clinic)";
    long doses = limits.dosesWithin(dose);
    if (doses < 1) {
      return "One such dose is above " + limit + ": the treating clinician gives a reason.";
    }
    if (doses == 1) {
      return "1 such dose stays within " + limit + ".";
    }
    return doses
        + " such doses stay within "
        + limit
        + ". Every "
        + limits.interval()
        + ", the last of them is "
        + limits.lastAfter(dose, limits.interval())
        + " after the first; every "
        + PublishedScheme.EAU.latest()
        + ", "
        + limits.lastAfter(dose, PublishedScheme.EAU.latest())
        + ".";
  }

  /** The same if there is anything to show. */
  static Optional<Prepared> of(RescueForm.Outcome outcome) {
    return outcome.mixing().flatMap(mixing -> outcome.volume().map(volume -> of(mixing, volume)));
  }
}
