package rungwise.checks.adversary;

import java.util.Optional;

/**
 * A report as it was said, and what became of it.
 *
 * <p>How long it lasted is an interval of minutes: from the least to the most that it can have
 * been. "At least" has no most, and of "not known" nobody was asked.
 */
final class Told {

  static final long NO_END = Long.MAX_VALUE;

  /**
   * What was said.
   *
   * @param at minute of the injection
   * @param soft the choice of the form, and its minutes
   * @param asked "none_found", "one_found" or "not_asked"
   * @param place "", "home" or "clinic"
   * @param vial the entry of the vial that was named; empty if none was
   */
  record Said(
      long at,
      long drawn,
      int grade,
      String soft,
      long first,
      long second,
      String asked,
      String place,
      String vial) {

    String words() {
      String lasting =
          switch (soft) {
            case "exactly" -> "soft after " + first + " min";
            case "at_least" -> "still firm at " + first + " min";
            case "between" -> "soft between " + first + " and " + second + " min";
            default -> soft;
          };
      return drawn
          + " uL drawn, grade "
          + grade
          + ", "
          + lasting
          + ", causes "
          + asked
          + (place.isEmpty() ? "" : ", said " + place)
          + (vial.isEmpty() ? "" : ", vial of entry " + Long.parseLong(vial.substring(24), 16));
    }
  }

  final Said said;
  final long entry;
  final String id;
  final Mix mix;
  final long ordered;
  final boolean observed;
  final boolean vialKnown;
  final boolean fresh;
  final String stock;
  final boolean byPrescriber;

  Optional<Told> replacedBy = Optional.empty();
  boolean withdrawn;
  boolean struckByPrescriber;
  boolean confirmed;

  Told(
      Said said,
      long entry,
      String id,
      Mix mix,
      long ordered,
      boolean observed,
      Drawn from,
      boolean byPrescriber) {
    this.said = said;
    this.entry = entry;
    this.id = id;
    this.mix = mix;
    this.ordered = ordered;
    this.observed = observed;
    this.vialKnown = from.known();
    this.fresh = from.fresh();
    this.stock = from.vial();
    this.byPrescriber = byPrescriber;
  }

  /** From what it was drawn. */
  record Drawn(String vial, boolean known, boolean fresh) {
    static final Drawn UNKNOWN = new Drawn("", /* known= */ false, /* fresh= */ false);
  }

  boolean counts() {
    return replacedBy.isEmpty() && !withdrawn;
  }

  long at() {
    return said.at();
  }

  long drawn() {
    return said.drawn();
  }

  /** The smaller of what was drawn and what was signed, if anything was. */
  long base() {
    return ordered == 0 ? drawn() : Math.min(drawn(), ordered);
  }

  boolean heard() {
    return !said.soft().equals("not_known");
  }

  long least() {
    return switch (said.soft()) {
      case "exactly", "at_least", "between" -> said.first();
      case "within_4_hours" -> 120;
      case "not_within_4_hours" -> 240;
      default -> 0;
    };
  }

  long most() {
    return switch (said.soft()) {
      case "exactly" -> said.first();
      case "between" -> said.second();
      case "within_2_hours" -> 120;
      case "within_4_hours" -> 240;
      default -> NO_END;
    };
  }

  /** Whether the most itself is left out. */
  private boolean isOpenAbove() {
    return !said.soft().equals("exactly");
  }

  /** It lasted that long or longer, or may have. */
  boolean mayReach(long minutes) {
    return heard() && (most() > minutes || (most() == minutes && !isOpenAbove()));
  }

  boolean mayPass(long minutes) {
    return heard() && most() > minutes;
  }

  /** 4 hours or more in so many words. */
  boolean saysFourHours() {
    return heard() && (most() == NO_END ? least() >= 240 : mayReach(240));
  }

  /** Over an hour, or nobody knows after any change. */
  boolean isLong() {
    return mayPass(60) || (said.grade() >= 1 && !heard());
  }

  boolean isUseful() {
    return said.grade() >= 3;
  }

  boolean failed() {
    return said.asked().equals("one_found");
  }

  boolean isAsked() {
    return !said.asked().equals("not_asked");
  }

  /** It counts, went in from a vial that is known, and is known to have been short. */
  boolean proves() {
    return counts() && wentInShort() && vialKnown;
  }

  private boolean wentInShort() {
    boolean toldOf = said.asked().equals("none_found") || heard() || said.grade() >= 1;
    return !failed() && !isLong() && toldOf;
  }

  /** It says a known end of less than 4 hours. */
  boolean endsBeforeFourHours() {
    return heard() && most() != NO_END && !mayReach(240);
  }

  /** What it says lies inside what the other one said, and takes nothing away from the danger. */
  boolean completes(Told other) {
    boolean inside =
        !other.heard() || (heard() && least() >= other.least() && most() <= other.most());
    return inside && mix.isSameAs(other.mix) && drawn() <= other.drawn();
  }

  String words() {
    return said.words() + ", of " + mix.label() + (observed ? ", in the clinic" : "");
  }
}
