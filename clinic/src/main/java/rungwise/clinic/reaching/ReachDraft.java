package rungwise.clinic.reaching;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * One thing about reaching a man, as typed or picked, with the names of its fields as a fault gives
 * them.
 *
 * @param what which thing; empty if none was picked
 * @param entry the number that is meant, where one on record is; empty where its text says it
 * @param number as typed
 * @param whose name of who answers there
 * @param from the first minute of his hours, as typed; may be empty
 * @param until the first minute that is too late, as typed; may be empty
 * @param message name of what may be left there
 * @param partner name of to whom else one may speak, as are post and interpreter
 * @param language as typed; may be empty
 * @param reason why a number is no longer his; may be empty
 */
public record ReachDraft(
    Optional<What> what,
    String entry,
    String number,
    String whose,
    String from,
    String until,
    String message,
    String partner,
    String post,
    String language,
    String interpreter,
    String reason) {

  public static final String WHAT = "what";
  public static final String ENTRY = "entry";
  public static final String NUMBER = "number";
  public static final String WHOSE = "whose";
  public static final String FROM = "from";
  public static final String UNTIL = "until";
  public static final String MESSAGE = "message";
  public static final String PARTNER = "partner";
  public static final String POST = "post";
  public static final String LANGUAGE = "language";
  public static final String INTERPRETER = "interpreter";
  public static final String REASON = "reason";

  /** What may be written down. */
  public enum What {
    NUMBER,
    GONE,
    WISHES,
    NOT_REACHED,
    REACHED;

    /** What a form sends. */
    public String token() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of a token, if there is one. */
    public static Optional<What> of(String token) {
      return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
    }
  }

  /** What names at most a number that is on record. */
  public static ReachDraft of(What what, String entry) {
    return new ReachDraft(Optional.of(what), entry, "", "", "", "", "", "", "", "", "", "");
  }

  /** A number with its hours and what may be left there. */
  public static ReachDraft number(
      String typed, String whose, String from, String until, String message) {
    return new ReachDraft(
        Optional.of(What.NUMBER), "", typed, whose, from, until, message, "", "", "", "", "");
  }

  /** What he asked for. */
  public static ReachDraft wishes(
      String partner, String post, String language, String interpreter) {
    return new ReachDraft(
        Optional.of(What.WISHES), "", "", "", "", "", "", partner, post, language, interpreter, "");
  }
}
