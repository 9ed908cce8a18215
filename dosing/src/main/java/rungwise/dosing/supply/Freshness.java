package rungwise.dosing.supply;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** Whether what was injected still had its strength. */
public enum Freshness {
  FRESH("fresh"),
  OLD("older stock"),
  NOT_KNOWN("age not known");

  private final String words;

  Freshness(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** How fresh a solution is on a day, if it counts as fresh for so many days from its making. */
  public static Freshness of(Optional<LocalDate> made, LocalDate day, int freshDays) {
    return made.map(start -> ChronoUnit.DAYS.between(start, day) > freshDays ? OLD : FRESH)
        .orElse(NOT_KNOWN);
  }
}
