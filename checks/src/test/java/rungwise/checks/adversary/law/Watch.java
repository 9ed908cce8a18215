package rungwise.checks.adversary.law;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What was written down beside the doses, and must not be overlooked. */
public final class Watch {

  /** A tablet for erections that holds an injection. */
  public record Tablet(long entry, long at) {}

  public final List<Tablet> tablets = new ArrayList<>();

  /** The entry by which a prescriber has seen the flags last; 0 while none has. */
  public long seen;

  /** Whether every entry is as it was written. */
  public boolean isSound = true;

  /** The first entries of the injections of which a man was handed over. */
  public final Set<Long> handed = new HashSet<>();

  /** When each item of readiness was on record first. */
  public final Map<String, Long> readySince = new HashMap<>();

  /**
   * The first entries of vials that fared otherwise than they should, which nobody judged since.
   */
  public final Set<String> spoilt = new HashSet<>();

  /** Whether somebody who is no prescriber said that such a vial may be used. */
  public boolean isJudgedByOthers;

  /** The last call about a long erection. */
  public final Call call = new Call();

  /** What was told from elsewhere. */
  public final Transfers transfers = new Transfers();

  /** Whether the course goes on. */
  public final Stand stand = new Stand();

  /** Whether a course goes on, and what ended with it. */
  public static final class Stand {

    public boolean paused;
    public boolean ended;

    /** Whether somebody who is no prescriber lifted, ended or opened anything. */
    public boolean isWrongHand;

    /** Whether somebody tried to lift what he had not seen whole, and whether it was lifted. */
    public boolean triedUnseen;

    public boolean isUnseen;

    /** The entry of the last end; 0 while there was none. */
    public long lastEnd;

    public void end(long entry) {
      ended = true;
      paused = false;
      lastEnd = entry;
    }

    boolean stops() {
      return paused || ended;
    }
  }
}
