package rungwise.checks.adversary.law;

import java.util.Optional;

/**
 * A report as it was said, and what became of it.
 *
 * <p>How long it lasted is an interval of minutes: from the least to the most that it can have
 * been. "At least" has no most, and of "not known" nobody was asked.
 */
public final class Told {

  public static final long NO_END = Long.MAX_VALUE;

  /**
   * What was said.
   *
   * @param at minute of the injection
   * @param soft the choice of the form, and its minutes
   * @param asked "none_found", "one_found" or "not_asked"
   * @param place "", "home" or "clinic"
   * @param vial the entry of the vial that was named; empty if none was
   * @param since minutes from the injection until it was told
   */
  public record Said(
      long at,
      long drawn,
      int grade,
      String soft,
      long first,
      long second,
      String asked,
      String place,
      String vial,
      long since) {

    /** Whether it says, or could mean, 4 hours or still firm. */
    public boolean mayBeFourHours() {
      return switch (soft) {
        case "at_least", "still", "from_240" -> true;
        case "exactly" -> first >= 240;
        case "between" -> second > 240;
        default -> false;
      };
    }

    private String lasting() {
      return switch (soft) {
        case "exactly" -> "soft after " + first + " min";
        case "at_least" -> "still firm at " + first + " min";
        case "between" -> "soft between " + first + " and " + second + " min";
        default -> soft;
      };
    }

    public String words() {
      return drawn
          + " uL drawn, grade "
          + grade
          + ", "
          + lasting()
          + ", causes "
          + asked
          + (place.isEmpty() ? "" : ", said " + place)
          + (vial.isEmpty() ? "" : ", vial of entry " + Long.parseLong(vial.substring(24), 16));
    }
  }

  public final Said said;
  public final long entry;
  public final String id;
  public final Mix mix;
  public final long ordered;
  public final boolean observed;
  public final boolean vialKnown;
  private final Drawn from;
  public final String stock;
  public final boolean byPrescriber;

  public Optional<Told> replacedBy = Optional.empty();
  public boolean withdrawn;
  public boolean struckByPrescriber;
  public boolean confirmed;

  public Told(
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
    this.from = from;
    this.stock = from.vial();
    this.byPrescriber = byPrescriber;
  }

  /**
   * From what it was drawn.
   *
   * @param made minute of its making; -1 where not said
   * @param single whether it is dissolved or opened for one injection
   */
  public record Drawn(String vial, boolean known, long made, boolean single) {
    public static final Drawn UNKNOWN =
        new Drawn("", /* known= */ false, /* made= */ -1, /* single= */ false);
  }

  /** Whether it counts as fresh under the rules of a protocol. */
  public boolean isFresh(Rulebook rules) {
    boolean young =
        from.made() >= 0 && Minutes.dayOf(at()) - Minutes.dayOf(from.made()) <= rules.freshDays();
    return from.single() || young;
  }

  public boolean counts() {
    return replacedBy.isEmpty() && !withdrawn;
  }

  public long at() {
    return said.at();
  }

  public long drawn() {
    return said.drawn();
  }

  /** The smaller of what was drawn and what was signed, if anything was. */
  public long base() {
    return ordered == 0 ? drawn() : Math.min(drawn(), ordered);
  }

  public boolean heard() {
    return !said.soft().equals("not_known") && !said.soft().equals("no_change");
  }

  public long least() {
    return switch (said.soft()) {
      case "exactly", "at_least", "between" -> said.first();
      case "from_61" -> 61;
      case "from_120" -> 120;
      case "from_240" -> 240;
      case "still" -> said.since();
      default -> 0;
    };
  }

  /** What is over ended before it was told. */
  public long most() {
    return switch (said.soft()) {
      case "exactly" -> said.first();
      case "between" -> upToTheCall(said.second());
      case "up_to_60" -> upToTheCall(60);
      case "from_61" -> upToTheCall(120);
      case "from_120" -> upToTheCall(240);
      case "from_240" -> upToTheCall(NO_END - 1);
      default -> NO_END;
    };
  }

  private long upToTheCall(long most) {
    return Math.min(most, Math.max(said.since(), least()));
  }

  /** Whether the most itself is left out. */
  private boolean isOpenAbove() {
    return !said.soft().equals("exactly") && most() > least();
  }

  /** It lasted that long or longer, or may have. */
  public boolean mayReach(long minutes) {
    return heard() && (most() > minutes || (most() == minutes && !isOpenAbove()));
  }

  public boolean mayPass(long minutes) {
    return heard() && most() > minutes;
  }

  /** 4 hours or more in so many words. */
  public boolean saysFourHours() {
    return heard() && (most() == NO_END ? least() >= 240 : mayReach(240));
  }

  /** Over an hour, or nobody knows after any change. */
  public boolean isLong() {
    return mayPass(60) || (said.grade() >= 1 && !heard());
  }

  public boolean isUseful() {
    return said.grade() >= 3;
  }

  public boolean failed() {
    return said.asked().equals("one_found");
  }

  /** It is known to have gone in: nothing went wrong, or nobody asked and it did something. */
  public boolean wentIn() {
    return said.asked().equals("none_found") || (!failed() && said.grade() >= 1);
  }

  /** It counts, went in from a vial that is known, and is known to have been short. */
  public boolean proves() {
    return counts() && wentIn() && !isLong() && vialKnown;
  }

  /** It says a known end of less than 4 hours. */
  public boolean endsBeforeFourHours() {
    return heard() && most() != NO_END && !mayReach(240);
  }

  /** Still firm when last seen, and nobody knows how it ended. */
  public boolean isEndOpen() {
    return heard() && most() == NO_END;
  }

  /** What it says lies inside what the other one said, and takes nothing away from the danger. */
  public boolean completes(Told other) {
    boolean inside =
        !other.heard() || (heard() && least() >= other.least() && most() <= other.most());
    return inside && other.mix.reaches(other.drawn(), mix, drawn());
  }

  public String words() {
    return said.words() + ", of " + mix.label() + (observed ? ", in the clinic" : "");
  }
}
