package rungwise.dosing.history;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.protocol.Protocol;

/**
 * What stands around the dose.
 *
 * @param began since when his course runs, from which a first examination is counted
 * @param examined when he was last examined for curvature and scarring; empty if that is not known
 * @param found the number of the last entry by which an examination had found curvature or
 *     scarring, whatever later ones were without
 * @param recalled whether the clinic has taken the preparation out of use
 * @param newer later versions of the protocol, in so far as their limits hold by now
 * @param lastTablet his last PDE5 inhibitor, as far as anybody was told; one that a prescriber lets
 *     him take daily is left out
 * @param unfinished what may mean 4 hours and is neither complete nor reviewed
 * @param expired what of the readiness for home was on record and has run out
 * @param flaws what of his record is not as it was written, in words; empty if nothing
 * @param clock why it is not known what time it is, in words; empty if it is known
 * @param halt that the course is paused or has ended; empty while it runs
 */
public record Circumstances(
    Optional<Instant> began,
    Optional<Instant> examined,
    Optional<Long> found,
    boolean recalled,
    List<Protocol> newer,
    Optional<LastTablet> lastTablet,
    List<Unfinished> unfinished,
    Set<Readiness> expired,
    List<String> flaws,
    Optional<String> clock,
    Optional<Halt> halt) {

  /**
   * The course does not run.
   *
   * @param since when that was written
   */
  public record Halt(Kind kind, Instant since) {

    /** How it was brought to a stand. */
    public enum Kind {
      PAUSED,
      ENDED
    }
  }

  /**
   * Somebody said what may mean 4 hours or still firm, and the report is not complete yet.
   *
   * @param told when it was said
   * @param injectedAt when he injected, if that was said too
   */
  public record Unfinished(Instant told, Optional<Instant> injectedAt) {}

  /**
   * A PDE5 inhibitor.
   *
   * @param at when he took the last one
   * @param of which of them there are on record, which no reader sees: another one is another
   *     reason to wait, also if it was taken at the same minute or before
   */
  public record LastTablet(Instant at, String of) {}

  public static final Circumstances NONE =
      new Circumstances(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          /* recalled= */ false,
          List.of(),
          Optional.empty(),
          List.of(),
          Set.of(),
          List.of(),
          Optional.empty(),
          Optional.empty());

  public Circumstances {
    newer = List.copyOf(newer);
    unfinished = List.copyOf(unfinished);
    expired = Set.copyOf(expired);
    flaws = List.copyOf(flaws);
  }

  /** Whether he was examined after that. */
  public boolean isExaminedSince(Instant instant) {
    return examined.filter(at -> at.isAfter(instant)).isPresent();
  }

  /** The same for a man who was last examined at an instant. */
  public Circumstances withExamined(Instant at) {
    return new Circumstances(
        began,
        Optional.of(at),
        found,
        recalled,
        newer,
        lastTablet,
        unfinished,
        expired,
        flaws,
        clock,
        halt);
  }

  /** The same after the entry of a number by which curvature or scarring was found. */
  public Circumstances withFound(long entry) {
    return new Circumstances(
        began,
        examined,
        Optional.of(entry),
        recalled,
        newer,
        lastTablet,
        unfinished,
        expired,
        flaws,
        clock,
        halt);
  }

  /** The same with a preparation that the clinic has taken out of use. */
  public Circumstances withRecall() {
    return new Circumstances(
        began,
        examined,
        found,
        /* recalled= */ true,
        newer,
        lastTablet,
        unfinished,
        expired,
        flaws,
        clock,
        halt);
  }

  /** The same under later versions of the protocol. */
  public Circumstances withNewer(List<Protocol> versions) {
    return new Circumstances(
        began,
        examined,
        found,
        recalled,
        versions,
        lastTablet,
        unfinished,
        expired,
        flaws,
        clock,
        halt);
  }

  /** The same after a tablet for erections. */
  public Circumstances withTablet(LastTablet tablet) {
    return new Circumstances(
        began,
        examined,
        found,
        recalled,
        newer,
        Optional.of(tablet),
        unfinished,
        expired,
        flaws,
        clock,
        halt);
  }

  /** The same with items of the readiness for home that have run out. */
  public Circumstances withExpired(Set<Readiness> items) {
    return new Circumstances(
        began, examined, found, recalled, newer, lastTablet, unfinished, items, flaws, clock, halt);
  }

  /** The same with what may mean 4 hours. */
  public Circumstances withUnfinished(List<Unfinished> worries) {
    return new Circumstances(
        began, examined, found, recalled, newer, lastTablet, worries, expired, flaws, clock, halt);
  }

  /** The same with a record that is not as it was written. */
  public Circumstances withFlaws(List<String> words) {
    return new Circumstances(
        began,
        examined,
        found,
        recalled,
        newer,
        lastTablet,
        unfinished,
        expired,
        words,
        clock,
        halt);
  }

  /** The same while it is not known what time it is. */
  public Circumstances withoutClock(String because) {
    return new Circumstances(
        began,
        examined,
        found,
        recalled,
        newer,
        lastTablet,
        unfinished,
        expired,
        flaws,
        Optional.of(because),
        halt);
  }

  /** The same of a course that does not run. */
  public Circumstances withHalt(Halt stand) {
    return new Circumstances(
        began,
        examined,
        found,
        recalled,
        newer,
        lastTablet,
        unfinished,
        expired,
        flaws,
        clock,
        Optional.of(stand));
  }
}
