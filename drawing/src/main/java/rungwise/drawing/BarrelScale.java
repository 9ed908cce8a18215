package rungwise.drawing;

import java.util.List;
import java.util.stream.LongStream;
import rungwise.quantities.Volume;

/**
 * The printed scale of a syringe, from its zero line at the needle end to its last line.
 *
 * @param capacity the volume at the last line, a multiple of numberedEvery
 * @param graduation the volume between two neighbouring lines
 * @param numberedEvery the volume between two numbered lines, a multiple of graduation
 * @param millimetres the length from the zero line to the last line, more than 0
 */
public record BarrelScale(
    Volume capacity,
    Volume graduation,
    Volume numberedEvery,
    ScaleNumbers numbers,
    int millimetres) {

  public BarrelScale {
    boolean even =
        graduation.isMoreThan(Volume.ZERO)
            && numberedEvery.isMoreThan(Volume.ZERO)
            && capacity.isMoreThan(Volume.ZERO)
            && capacity.isMultipleOf(numberedEvery)
            && numberedEvery.isMultipleOf(graduation)
            && numbers.isPrintableEvery(numberedEvery);
    if (!even || millimetres < 1) {
      throw new IllegalArgumentException(
          "bug: no scale of "
              + capacity
              + " by "
              + graduation
              + ", numbered every "
              + numberedEvery
              + ", on "
              + millimetres
              + " mm");
    }
  }

  /** Every printed line, the zero line first. */
  public List<Volume> lines() {
    long steps = capacity.microlitres() / graduation.microlitres();
    return LongStream.rangeClosed(0, steps).mapToObj(graduation::times).toList();
  }

  /** Whether a line stands at that volume; the zero line is one. */
  public boolean hasLineAt(Volume volume) {
    return volume.isMultipleOf(graduation) && !volume.isMoreThan(capacity);
  }

  /** Whether the line at that volume is one of the longer ones. The zero line is one. */
  boolean isLongAt(Volume line) {
    return line.isMultipleOf(numberedEvery);
  }

  /** Whether a number stands beside the line at that volume. The zero line carries none. */
  public boolean isNumberedAt(Volume line) {
    return isLongAt(line) && line.isMoreThan(Volume.ZERO);
  }

  /**
   * Refuses a volume that cannot be drawn up to a line.
   *
   * @throws IllegalArgumentException if no line above the zero line stands there
   */
  void requireLineAt(Volume volume) {
    if (!hasLineAt(volume) || !volume.isMoreThan(Volume.ZERO)) {
      throw new IllegalArgumentException(
          "bug: no line at " + volume + " on a scale of " + capacity + " by " + graduation);
    }
  }
}
