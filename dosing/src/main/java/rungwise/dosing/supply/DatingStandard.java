package rungwise.dosing.supply;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/**
 * The longest that a compounded vial may be dated by the standard, by how it was made. The pharmacy
 * sets the date and the clinic copies it: this tells only a date that is too late for any. Where
 * two copies of the text differ, the shorter counts.
 */
public enum DatingStandard {
  CATEGORY_1(hours(12), hours(24), Optional.empty(), false),
  ASEPTIC_OF_STERILE(days(4), days(10), Optional.of(days(45)), false),
  ASEPTIC_OF_NONSTERILE(days(1), days(4), Optional.of(days(45)), true),
  ASEPTIC_TESTED(days(30), days(45), Optional.of(days(60)), true),
  TERMINAL(days(14), days(28), Optional.of(days(45)), true),
  TERMINAL_TESTED(days(45), days(60), Optional.of(days(90)), true),
  CATEGORY_3_ASEPTIC(days(60), days(90), Optional.of(days(120)), false),
  CATEGORY_3_TERMINAL(days(90), days(120), Optional.of(days(180)), false);

  private static final int HOURS_IN_A_DAY = 24;

  private final TimeSpan room;
  private final TimeSpan refrigerator;
  private final Optional<TimeSpan> freezer;
  private final boolean fromMemory;

  DatingStandard(
      TimeSpan room, TimeSpan refrigerator, Optional<TimeSpan> freezer, boolean fromMemory) {
    this.room = room;
    this.refrigerator = refrigerator;
    this.freezer = freezer;
    this.fromMemory = fromMemory;
  }

  private static TimeSpan hours(int hours) {
    return TimeSpan.ofHours(hours);
  }

  private static TimeSpan days(int days) {
    return TimeSpan.ofHours((long) days * HOURS_IN_A_DAY);
  }

  /** The longest from its making, if the standard allows that storage at all. */
  public Optional<Sourced<TimeSpan>> longest(Storage storage) {
    Optional<TimeSpan> limit =
        switch (storage) {
          case ROOM -> Optional.of(room);
          case REFRIGERATOR -> Optional.of(refrigerator);
          case FREEZER -> freezer;
        };
    String place = "beyond-use dates";
    Source source =
        fromMemory
            ? Source.remembered(Citation.USP_797, place)
            : Source.secondary(Citation.USP_797, place);
    return limit.map(span -> new Sourced<>(span, source));
  }
}
