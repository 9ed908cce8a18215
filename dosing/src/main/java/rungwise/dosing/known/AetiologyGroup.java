package rungwise.dosing.known;

import java.util.Arrays;
import java.util.Optional;

/** Why a man cannot get an erection, as far as it matters for the first dose. */
public enum AetiologyGroup {
  SPINAL_CORD("spinal_cord", "spinal cord (neurogenic)"),
  POST_PROSTATECTOMY("post_prostatectomy", "after prostatectomy or pelvic surgery"),
  VASCULOGENIC("vasculogenic", "vasculogenic"),
  PSYCHOGENIC("psychogenic", "psychogenic"),
  MIXED("mixed", "mixed"),
  UNKNOWN("unknown", "not known");

  /** What the labels call the first group. */
  private static final String LABEL_WORD_FOR_SPINAL_CORD = "neurogenic";

  private final String token;
  private final String words;

  AetiologyGroup(String token, String words) {
    this.token = token;
    this.words = words;
  }

  public String token() {
    return token;
  }

  public String words() {
    return words;
  }

  public static Optional<AetiologyGroup> of(String token) {
    if (token.equals(LABEL_WORD_FOR_SPINAL_CORD)) {
      return Optional.of(SPINAL_CORD);
    }
    return Arrays.stream(values()).filter(group -> group.token.equals(token)).findFirst();
  }
}
