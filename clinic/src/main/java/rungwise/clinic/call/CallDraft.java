package rungwise.clinic.call;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * One thing that is written down in a call, as typed or picked.
 *
 * @param what which thing; empty if none was picked
 * @param time of what is said; an empty clock means now
 * @param speaker the name of whose word it is
 * @param picked the step, the start that is struck, or who has the call from then on
 * @param why the name of why it is handed on
 * @param place where he is handed to, as is whom
 * @param words the writer's
 */
public record CallDraft(
    Optional<What> what,
    SaidTime time,
    String speaker,
    String picked,
    String why,
    String place,
    String whom,
    String words) {

  /** What may be written down. */
  public enum What {
    BEGAN,
    NOT_KNOWN,
    FIRM,
    DONE,
    STRIKE,
    HAND_ON,
    SOFT,
    HANDED_TO;

    /** What a form sends. */
    public String token() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of a token, if there is one. */
    public static Optional<What> of(String token) {
      return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
    }
  }

  /** The fields of the form. */
  public static final String WHAT = "what";

  public static final String SPEAKER = "speaker";
  public static final String PICKED = "picked";
  public static final String WHY = "why";
  public static final String PLACE = "place";
  public static final String WHOM = "whom";
  public static final String WORDS = "words";

  /** Nothing but what it is. */
  public static CallDraft of(What what) {
    return new CallDraft(Optional.of(what), new SaidTime("", ""), "", "", "", "", "", "");
  }

  /** The same at a time of today or yesterday. */
  public CallDraft at(SaidTime said) {
    return new CallDraft(what, said, speaker, picked, why, place, whom, words);
  }

  /** The same with what was picked, and the writer's words. */
  public CallDraft picking(String one, String why, String reason) {
    return new CallDraft(what, time, speaker, one, why, place, whom, reason);
  }

  /** The same with where he is, and in whose care. */
  public CallDraft to(String where, String person) {
    return new CallDraft(what, time, speaker, picked, why, where, person, words);
  }
}
