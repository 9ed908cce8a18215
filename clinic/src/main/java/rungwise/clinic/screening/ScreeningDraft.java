package rungwise.clinic.screening;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.screening.Topic;

/**
 * The screening form as typed.
 *
 * @param answers "yes", "no" or "not known" by the name of a condition; what is absent stays as it
 *     was
 * @param stillTrue whether he said today that the other answers are still true
 * @param noToRest topics in which he said no to everything that has no answer, typed or on record
 * @param basis the number of the last entry that the form had shown, where it showed any
 */
public record ScreeningDraft(
    Map<String, String> answers, boolean stillTrue, Set<Topic> noToRest, Optional<Long> basis) {

  public ScreeningDraft {
    answers = Map.copyOf(answers);
    noToRest = Set.copyOf(noToRest);
  }

  /** A draft that answers each question by itself. */
  public ScreeningDraft(Map<String, String> answers, boolean stillTrue) {
    this(answers, stillTrue, Set.of(), Optional.empty());
  }
}
