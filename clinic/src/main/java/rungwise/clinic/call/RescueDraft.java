package rungwise.clinic.call;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * One thing that is written in the log of a rescue, as typed.
 *
 * @param what which thing; empty if none was picked
 * @param typed by the names of the fields
 */
public record RescueDraft(Optional<What> what, Map<String, String> typed) {

  /** What may be written. */
  public enum What {
    GIVEN,
    MEASURED,
    GAS,
    PREPARE,
    TICK,
    STRIKE;

    /** What a form sends. */
    public String token() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of a token, if there is one. */
    public static Optional<What> of(String token) {
      return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
    }
  }

  /** The fields of the forms, beside those of {@link RescueFields}. */
  public static final String WHAT = "what";

  public static final String DAY = "day";
  public static final String DATE = "date";
  public static final String TIME = "time";
  public static final String VOLUME = "volume";
  public static final String SIDE = "side";
  public static final String SYSTOLIC = "systolic";
  public static final String DIASTOLIC = "diastolic";
  public static final String PULSE = "pulse";
  public static final String GIVEN_BY = "given-by";
  public static final String SECOND = "second";
  public static final String READ = "read";
  public static final String ENTRY = "entry";
  public static final String STEP = "step";
  public static final String SPEAKER = "speaker";
  public static final String WORDS = "reason";

  /** What is picked where the same amount went into each side. */
  public static final String EACH = "EACH";

  public RescueDraft {
    typed = Map.copyOf(typed);
  }

  /** Nothing but what it is: now, and with nothing typed. */
  public static RescueDraft of(What what) {
    return new RescueDraft(Optional.of(what), Map.of());
  }

  /** The same with one more field. */
  public RescueDraft with(String field, String text) {
    var more = new HashMap<>(typed);
    more.put(field, text);
    return new RescueDraft(what, more);
  }

  /** What stands in a field, without the spaces around it. */
  public String text(String field) {
    return typed.getOrDefault(field, "").strip();
  }
}
