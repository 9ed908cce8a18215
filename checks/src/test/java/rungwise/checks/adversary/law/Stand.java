package rungwise.checks.adversary.law;

/** Whether a course goes on, and what ended with it. */
public final class Stand {

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
