package rungwise.dosing.supply;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.Form;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.dosing.supply.VialEnd.InUse;
import rungwise.quantities.TimeSpan;

/**
 * The dates of one vial. A vial may be used up to and with its last day.
 *
 * @param made when it was compounded
 * @param beyondUse the date on its label
 * @param opened when it was first punctured, or dissolved
 * @param daysInUse how many days its own label lets it be used once opened
 */
public record VialDates(
    Optional<LocalDate> made,
    LocalDate beyondUse,
    Optional<Opening> opened,
    Optional<Integer> daysInUse) {

  /**
   * How long a container for one injection may stand open before it is used; a powder has its own
   * hours.
   */
  public static final Sourced<TimeSpan> SINGLE_USE_OPEN =
      new Sourced<>(
          TimeSpan.ofHours(1),
          new Source.CommonPractice("outside a clean bench a single-dose vial is used at once"));

  public VialDates {
    if (daysInUse.filter(days -> days < 1).isPresent()) {
      throw new IllegalArgumentException("bug: in use for " + daysInUse + " days");
    }
  }

  /** The same vial, open at that time at the latest. */
  public VialDates openBy(Opening use, ZoneId zone) {
    Opening first = opened.map(told -> told.orEarlier(use, zone)).orElse(use);
    return new VialDates(made, beyondUse, Optional.of(first), daysInUse);
  }

  /**
   * The earliest of the date on the label and of every limit that counts from the opening: that of
   * the preparation, that of a dissolved powder, and what this label says.
   *
   * @param rule how long the preparation may be used once opened
   * @param zone where a day begins
   */
  public VialEnd end(InUseRule rule, Form form, ZoneId zone) {
    List<VialEnd> inUse = opened.map(from -> inUseEnds(from, rule, form, zone)).orElse(List.of());
    VialEnd label = VialEnd.byLabel(endOf(beyondUse, zone));
    if (opened.isPresent() && inUse.isEmpty()) {
      return new VialEnd(label.at(), label.by(), InUse.OPEN_AND_NOT_STATED);
    }
    return inUse.stream()
        .min(Comparator.comparing(VialEnd::at))
        .filter(end -> end.at().isBefore(label.at()))
        .orElse(label);
  }

  private List<VialEnd> inUseEnds(Opening from, InUseRule rule, Form form, ZoneId zone) {
    var ends = new ArrayList<VialEnd>();
    if (form instanceof Form.Powder powder) {
      TimeSpan usable = powder.usableFor();
      ends.add(after(from, usable, new VialLimit.Dissolved(usable), zone));
    }
    switch (rule) {
      case InUseRule.DaysAfterOpening limit -> ends.add(afterDays(from, limit.days(), zone));
      case InUseRule.SingleUse once when ends.isEmpty() -> {
        TimeSpan open = SINGLE_USE_OPEN.value();
        ends.add(after(from, open, new VialLimit.SingleUse(open), zone));
      }
      case InUseRule.SingleUse once -> {}
      case InUseRule.NotStated unknown -> {}
    }
    daysInUse.ifPresent(days -> ends.add(afterDays(from, days, zone)));
    return ends;
  }

  private static VialEnd afterDays(Opening from, int days, ZoneId zone) {
    return new VialEnd(
        endOf(inUseUntil(from.day(), days), zone), new VialLimit.DaysOpen(days), InUse.KNOWN);
  }

  private static VialEnd after(Opening from, TimeSpan span, VialLimit by, ZoneId zone) {
    return new VialEnd(span.after(from.earliest(zone)), by, InUse.KNOWN);
  }

  private static Instant endOf(LocalDate lastDay, ZoneId zone) {
    return lastDay.plusDays(1).atStartOfDay(zone).toInstant();
  }

  /** The last day of a vial that may be used for so many days from its first puncture. */
  public static LocalDate inUseUntil(LocalDate firstPuncture, int days) {
    return firstPuncture.plusDays(days);
  }
}
