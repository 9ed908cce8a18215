package rungwise.clinic.screening;

import java.util.Map;

/**
 * The screening form as typed.
 *
 * @param answers "yes", "no" or "not known" by the name of a condition; what is absent stays as it
 *     was
 * @param stillTrue whether he said today that the other answers are still true
 */
public record ScreeningDraft(Map<String, String> answers, boolean stillTrue) {

  public ScreeningDraft {
    answers = Map.copyOf(answers);
  }
}
