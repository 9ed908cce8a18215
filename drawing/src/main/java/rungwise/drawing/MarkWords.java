package rungwise.drawing;

import java.util.List;
import rungwise.quantities.Volume;

/**
 * How a reader finds a line on a syringe of which only some lines are numbered: "the line marked
 * 20", or "two small lines past the 10". Lines are counted away from the needle.
 */
public final class MarkWords {

  private static final List<String> COUNTS =
      List.of("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

  private MarkWords() {}

  /**
   * The words for the line at a volume.
   *
   * @throws IllegalArgumentException if no line above the zero line stands there
   */
  public static String of(BarrelScale scale, Volume volume) {
    scale.requireLineAt(volume);
    if (scale.isNumberedAt(volume)) {
      return "the line marked " + scale.numbers().at(volume);
    }
    Volume step = scale.numberedEvery();
    Volume before = step.times(volume.microlitres() / step.microlitres());
    long small = volume.minus(before).microlitres() / scale.graduation().microlitres();
    String lines = counted(small) + (small == 1 ? " small line past " : " small lines past ");
    return lines
        + (before.equals(Volume.ZERO) ? "the zero line" : "the " + scale.numbers().at(before));
  }

  private static String counted(long number) {
    return number < COUNTS.size() ? COUNTS.get((int) number) : Long.toString(number);
  }
}
