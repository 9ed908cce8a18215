package rungwise.clinic.screening;

import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;

/** Forms of the screening. */
public final class ScreeningForm {

  private ScreeningForm() {}

  /** One answer to every question. */
  public static ScreeningDraft all(Answer answer) {
    return new ScreeningDraft(
        Arrays.stream(Condition.values())
            .collect(Collectors.toMap(Condition::name, condition -> answer.words())),
        /* stillTrue= */ false);
  }

  /** An answer to one question. */
  public static ScreeningDraft one(Condition condition, Answer answer) {
    return new ScreeningDraft(Map.of(condition.name(), answer.words()), /* stillTrue= */ false);
  }

  /** Every answer is still true. */
  public static ScreeningDraft stillTrue() {
    return new ScreeningDraft(Map.of(), /* stillTrue= */ true);
  }
}
