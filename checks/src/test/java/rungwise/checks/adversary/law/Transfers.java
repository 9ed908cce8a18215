package rungwise.checks.adversary.law;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** What was told of doses that he injects elsewhere, and at what the schedule was opened. */
public final class Transfers {

  /**
   * A told dose.
   *
   * @param latest the last minute at which it can have been
   * @param lasted minutes; {@link Told#NO_END} where it was still firm, -1 where nobody knows
   */
  public record Elsewhere(long entry, long latest, Mix mix, long drawn, long lasted) {

    boolean mayReach(long minutes) {
      return lasted >= minutes;
    }

    /** Whether half of a component is less than that. */
    boolean isPassedBy(int component, long held) {
      return mix.has(component) && 2 * held > mix.holds(component, drawn);
    }

    /** Watched here after it was told, and shown to be short. */
    boolean isAnsweredBy(Told here) {
      return here.observed && here.proves() && here.entry > entry && here.at() >= latest;
    }

    String words() {
      return drawn + " uL of " + mix.label() + " elsewhere, " + lasted + " min";
    }
  }

  /** At what a prescriber opened a mixture's schedule. */
  public record Opened(long entry, Mix mix, long upTo) {}

  public final List<Elsewhere> told = new ArrayList<>();
  public final List<Opened> opened = new ArrayList<>();

  /** Whether somebody who is no prescriber opened a schedule. */
  public boolean isWrongHand;

  /** Whether somebody tried to. */
  public boolean triedByOthers;

  /** The most that was opened of a mixture since everything was told; 0 where nothing was. */
  long openedOf(Mix mix) {
    long last = told.stream().mapToLong(Elsewhere::entry).max().orElse(0);
    return opened.stream()
        .filter(one -> one.entry() > last && one.mix().isSameAs(mix))
        .mapToLong(Opened::upTo)
        .max()
        .orElse(0);
  }

  /** The least of a component that any told dose held. */
  OptionalLong leastOf(int component) {
    return told.stream()
        .filter(one -> one.mix().has(component))
        .mapToLong(one -> one.mix().holds(component, one.drawn()))
        .min();
  }
}
