package rungwise.dosing.supply;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The dates of one vial. A vial may be used up to and with its last day.
 *
 * @param made when it was compounded, or dissolved
 * @param beyondUse the date on its label
 * @param opened when it was first punctured
 * @param daysInUse how many days it may be used once opened
 */
public record VialDates(
    Optional<LocalDate> made,
    LocalDate beyondUse,
    Optional<LocalDate> opened,
    Optional<Integer> daysInUse) {

  public VialDates {
    if (daysInUse.filter(days -> days < 1).isPresent()) {
      throw new IllegalArgumentException("bug: in use for " + daysInUse + " days");
    }
  }

  /** The earlier of the date on the label and the end of use once opened. */
  public LocalDate lastDay() {
    Optional<LocalDate> inUse = opened.flatMap(day -> daysInUse.map(days -> inUseUntil(day, days)));
    return Stream.concat(Stream.of(beyondUse), inUse.stream())
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  /** The last day of a vial that may be used for so many days from its first puncture. */
  public static LocalDate inUseUntil(LocalDate firstPuncture, int days) {
    return firstPuncture.plusDays(days);
  }
}
