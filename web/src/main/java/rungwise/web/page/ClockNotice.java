package rungwise.web.page;

import java.util.List;

/**
 * What a page says of the clock.
 *
 * @param say how loud it is said
 * @param asks whether a person's word for date and time is asked for
 * @param answer the sentence itself; empty if nothing is said
 * @param more what stands with it, a sentence each
 * @param script address of the script that sends what the browser's own clock says; empty if nobody
 *     is signed in
 */
public record ClockNotice(Say say, boolean asks, String answer, List<String> more, String script) {

  /** How loud it is said. */
  public enum Say {
    NOTHING,
    /** Nothing independent answers; somebody has confirmed date and time. */
    QUIETLY,
    /** It is wrong, or nobody has confirmed it: no answer of time is given. */
    LOUDLY
  }

  public static final ClockNotice NONE =
      new ClockNotice(Say.NOTHING, /* asks= */ false, "", List.of(), "");

  public ClockNotice {
    more = List.copyOf(more);
  }

  public boolean isQuiet() {
    return say == Say.QUIETLY;
  }

  /** Whether answers are held back because of it. */
  public boolean isLoud() {
    return say == Say.LOUDLY;
  }
}
