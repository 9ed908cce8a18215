package rungwise.dosing.history;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;

/** How firm the erection was. */
public enum Grade {
  NONE("nothing happened"),
  FULLER("fuller but not firm"),
  FIRM_NOT_USABLE("firm but not usable"),
  USABLE("usable"),
  FULLY_FIRM("fully firm");

  /** From which grade a response is adequate. */
  public static final Source ADEQUATE_SOURCE =
      Source.read(Citation.MULHALL_2007, "adequate is grade 3 or 4 of 0 to 4");

  private final String words;

  Grade(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Its number, 0 to 4. */
  public int number() {
    return switch (this) {
      case NONE -> 0;
      case FULLER -> 1;
      case FIRM_NOT_USABLE -> 2;
      case USABLE -> 3;
      case FULLY_FIRM -> 4;
    };
  }

  /** The grade of a number; none outside 0 to 4. */
  public static Optional<Grade> of(int number) {
    for (Grade grade : values()) {
      if (grade.number() == number) {
        return Optional.of(grade);
      }
    }
    return Optional.empty();
  }

  /** Enough for intercourse: grade 3 or 4. */
  public boolean isUseful() {
    return this == USABLE || this == FULLY_FIRM;
  }

  /** Firm, usable or not: grade 2 and up. */
  public boolean isFirm() {
    return this == FIRM_NOT_USABLE || isUseful();
  }

  /** Any change at all: grade 1 and up. */
  public boolean isAnyFirmness() {
    return this != NONE;
  }
}
