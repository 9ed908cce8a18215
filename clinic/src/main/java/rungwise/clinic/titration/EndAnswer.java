package rungwise.clinic.titration;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.TimeSpan;

/**
 * The answers to "how long after the injection until he was fully soft?". Fuller but not firm is
 * not soft. Each has fields of its own, and no field belongs to two.
 */
public enum EndAnswer {
  NO_CHANGE("no change at all", false),
  UP_TO_60("up to 60 min", false),
  FROM_61("61 to 119 min", false),
  FROM_120("120 to 239 min", false),
  FROM_240("240 min or more, over now", true),
  STILL("still firm or fuller now", true, ReportPart.SEEN_AT),
  EXACTLY("after exact minutes", false, ReportPart.EXACT_MINUTES),
  ABOUT("at about a clock time", false, ReportPart.SOFT_AT),
  BETWEEN("between two times", false, ReportPart.FROM_MINUTES, ReportPart.BEFORE_MINUTES),
  AT_LEAST("firm or fuller when last seen, end not known", true, ReportPart.LEAST_MINUTES),
  NOT_KNOWN("not known", false);

  private static final long HOUR = 60;
  private static final long TWO_HOURS = 120;
  private static final long FOUR_HOURS = 240;

  private final String words;
  private final boolean mayBeFourHours;
  private final List<ReportPart> parts;

  EndAnswer(String words, boolean mayBeFourHours, ReportPart... parts) {
    this.words = words;
    this.mayBeFourHours = mayBeFourHours;
    this.parts = List.of(parts);
  }

  public String words() {
    return words;
  }

  /** What a form sends. */
  public String token() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether it says 4 hours, or has no end. */
  public boolean mayBeFourHours() {
    return mayBeFourHours;
  }

  /** Its own fields. */
  public List<ReportPart> parts() {
    return parts;
  }

  /** The answer of a token, if there is one. */
  public static Optional<EndAnswer> of(String token) {
    return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
  }

  /** What was answered, from what is on record. */
  public static EndAnswer of(SoftAfter soft, Grade grade) {
    return Arrays.stream(values())
        .filter(one -> one.span().filter(soft::equals).isPresent())
        .findFirst()
        .orElseGet(() -> ofOther(soft, grade));
  }

  private static EndAnswer ofOther(SoftAfter soft, Grade grade) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> EXACTLY;
      case SoftAfter.AtLeast atLeast -> AT_LEAST;
      case SoftAfter.Between between -> BETWEEN;
      case SoftAfter.NotKnown notKnown -> grade == Grade.NONE ? NO_CHANGE : NOT_KNOWN;
    };
  }

  /** The span that an answer without fields means, before it is known when it was told. */
  Optional<SoftAfter.Between> span() {
    return switch (this) {
      case UP_TO_60 -> between(0, HOUR);
      case FROM_61 -> between(HOUR + 1, TWO_HOURS);
      case FROM_120 -> between(TWO_HOURS, FOUR_HOURS);
      default -> Optional.empty();
    };
  }

  private static Optional<SoftAfter.Between> between(long from, long before) {
    return Optional.of(new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before)));
  }
}
