package rungwise.clinic.reach;

/**
 * What a man asked for, at whatever number he is called.
 *
 * @param language in which he is spoken to; empty if he said nothing of it
 */
public record Wishes(Partner partner, Post post, String language, Interpreter interpreter) {

  /** The most characters of a language. */
  public static final int LONGEST_LANGUAGE = 60;

  /** What counts for who was never asked: the most careful of each. */
  public static final Wishes NOT_ASKED =
      new Wishes(Partner.NOBODY, Post.NONE, "", Interpreter.NOT_NEEDED);

  /** To whom else one may speak. */
  public enum Partner {
    NOBODY("speak with nobody but him"),
    CALL_BACK("his partner may be asked that he calls back, and is told nothing else"),
    EVERYTHING("his partner may be spoken to about his treatment");

    private final String words;

    Partner(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** What may be sent to his address. */
  public enum Post {
    NONE("send nothing by post"),
    PLAIN("post only in a plain envelope, without the clinic's name"),
    ORDINARY("ordinary post");

    private final String words;

    Post(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Whether somebody has to interpret. */
  public enum Interpreter {
    NOT_NEEDED("no interpreter is needed"),
    NEEDED("an interpreter is needed");

    private final String words;

    Interpreter(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
