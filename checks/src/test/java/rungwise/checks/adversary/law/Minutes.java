package rungwise.checks.adversary.law;

import java.time.LocalDateTime;
import java.time.ZoneOffset;

/** Minutes since 1970 in UTC, as days and as a wall clock shows them. */
public final class Minutes {

  private Minutes() {}

  /** Days since 1970. */
  public static long dayOf(long minute) {
    return Math.floorDiv(minute, Ledger.DAY);
  }

  /** "2026-03-02T12:00". */
  public static LocalDateTime local(long minute) {
    return LocalDateTime.ofEpochSecond(minute * 60, 0, ZoneOffset.UTC);
  }

  /** "2026-03-02". */
  public static String date(long minute) {
    return local(minute).toLocalDate().toString();
  }

  /** "12:00". */
  public static String time(long minute) {
    return local(minute).toLocalTime().toString();
  }
}
