package rungwise.dosing.known;

import java.math.BigDecimal;
import java.util.List;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/** How it is injected, as the labels and one teaching paper say. */
public final class Technique {

  /** Where on the shaft; narrower than the two thirds that a teaching paper allows. */
  public static final Sourced<List<String>> ZONE =
      new Sourced<>(
          List.of("dorsolateral proximal third", "avoid visible veins", "alternate side and site"),
          Source.read(Citation.US_SYRINGE_LABEL, "2"));

  /** For how long the place is pressed afterwards. */
  public static final Sourced<TimeSpan> COMPRESSION =
      new Sourced<>(TimeSpan.ofMinutes(5), Source.read(Citation.US_SYRINGE_LABEL, "2"));

  /** From injection to firmness: the shortest and the longest. */
  public static final Sourced<List<TimeSpan>> ONSET =
      new Sourced<>(
          List.of(TimeSpan.ofMinutes(5), TimeSpan.ofMinutes(20)),
          Source.read(Citation.US_SYRINGE_LABEL, "onset within 5 to 20 minutes"));

  /** How many seconds an injection takes: the fewest and the most. */
  public static final Sourced<List<Integer>> PUSH_SECONDS =
      new Sourced<>(
          List.of(5, 10), Source.read(Citation.US_CARTRIDGE_LABEL, "slowly, over 5 to 10 seconds"));

  /** Lengths of needles, in inches. */
  public static final Sourced<List<BigDecimal>> NEEDLE_INCHES =
      new Sourced<>(
          List.of(new BigDecimal("0.5"), new BigDecimal("0.625")),
          Source.read(Citation.ALBAUGH_2006, "1/2 or 5/8 inch"));

  private Technique() {}
}
