package rungwise.web.page;

import java.util.Optional;

/**
 * One safety verdict as shown: word and shape say its class, colour only repeats it.
 *
 * @param kind its class
 * @param sentence what holds and why
 * @param next when it clears or what would clear it; may be empty
 * @param way where what clears it is written down
 */
public record VerdictLine(Kind kind, String sentence, String next, Optional<Way> way) {

  /** A page and the word of the link that leads there. */
  public record Way(String path, String word) {}

  /** A verdict that leads nowhere. */
  public VerdictLine(Kind kind, String sentence, String next) {
    this(kind, sentence, next, Optional.empty());
  }

  /** The class of a verdict. */
  public enum Kind {
    HARD_STOP("Hard stop"),
    HOLD("Hold"),
    NOTE("Note");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  public VerdictLine {
    if (sentence.isBlank()) {
      throw new IllegalArgumentException("bug: a verdict without a reason");
    }
  }
}
