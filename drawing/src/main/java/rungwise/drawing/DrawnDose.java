package rungwise.drawing;

import rungwise.quantities.Volume;

/**
 * A dose in a marked syringe, as it is to be drawn.
 *
 * @param volume stands on a line of the scale, above its zero line
 * @param mark the words for that line, such as "20-unit mark"
 * @param syringe the words for the syringe, such as "0.5 mL U-100 syringe"
 * @param needle the word for its needle
 * @param description what the drawing shows, for a reader who does not see it
 */
public record DrawnDose(
    BarrelScale scale,
    Volume volume,
    String mark,
    String syringe,
    String needle,
    String description) {

  public DrawnDose {
    scale.requireLineAt(volume);
    if (mark.isBlank() || syringe.isBlank() || needle.isBlank() || description.isBlank()) {
      throw new IllegalArgumentException("bug: a drawing of " + volume + " without its words");
    }
  }

  /** The same as the pages say it. */
  public DrawnDose(BarrelScale scale, Volume volume, String mark, String syringe) {
    this(scale, volume, mark, syringe, "needle", described(scale, volume, syringe));
  }

  /** What the drawing is called: "0.2 mL (20-unit mark)". */
  public String title() {
    return volume + " (" + mark + ")";
  }

  private static String described(BarrelScale scale, Volume volume, String syringe) {
    return "A "
        + syringe
        + " with the needle on the left. The scale begins at the needle end. The edge of the"
        + " stopper that faces the liquid stands at "
        + MarkWords.of(scale, volume)
        + ", which is "
        + volume
        + ". Liquid fills the syringe up to that edge.";
  }
}
