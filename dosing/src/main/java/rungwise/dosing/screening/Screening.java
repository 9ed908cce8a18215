package rungwise.dosing.screening;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import rungwise.dosing.known.Preparation;

/**
 * What a man answered, and when each answer was last said to be true.
 *
 * @param answers by condition; one that is not in it was never asked about
 * @param decided conditions with which a prescriber decided, in writing, to go on
 */
public record Screening(Map<Condition, Answered> answers, Set<Condition> decided) {

  public static final Screening NOT_ASKED = new Screening(Map.of(), Set.of());

  /**
   * An answer.
   *
   * @param at when it was given, or last said to be still true
   */
  public record Answered(Answer answer, Instant at) {}

  private static final Condition[] ALL = Condition.values();

  public Screening {
    var ordered = new EnumMap<Condition, Answered>(Condition.class);
    ordered.putAll(answers);
    answers = Collections.unmodifiableMap(ordered);
    decided = Set.copyOf(decided);
  }

  /** One answer to every question, given at an instant. */
  public static Screening all(Answer answer, Instant at) {
    var answers = new EnumMap<Condition, Answered>(Condition.class);
    for (Condition condition : Condition.values()) {
      answers.put(condition, new Answered(answer, at));
    }
    return new Screening(answers, Set.of());
  }

  /** The same with another answer to one question. */
  public Screening with(Condition condition, Answer answer, Instant at) {
    var changed = new EnumMap<Condition, Answered>(Condition.class);
    changed.putAll(answers);
    changed.put(condition, new Answered(answer, at));
    return new Screening(changed, decided);
  }

  /** The answer to a question; not known if it was never asked. */
  public Answer answerTo(Condition condition) {
    Answered answered = answers.get(condition);
    return answered == null ? Answer.NOT_KNOWN : answered.answer();
  }

  /** Conditions that he has and that mean this for a preparation. */
  public List<Condition> present(Finding finding, Preparation preparation) {
    return where(
        condition ->
            answerTo(condition) == Answer.YES && condition.findingFor(preparation) == finding);
  }

  /** Conditions that he has, that need a decision, and on which none is written. */
  public List<Condition> undecided(Preparation preparation) {
    return where(
        condition ->
            answerTo(condition) == Answer.YES
                && condition.findingFor(preparation) == Finding.DECISION
                && !decided.contains(condition));
  }

  /** Conditions that must be known for a preparation and are not. */
  public List<Condition> open(Preparation preparation) {
    return where(
        condition ->
            answerTo(condition) == Answer.NOT_KNOWN
                && condition.findingFor(preparation).mustBeKnown());
  }

  /** Heart conditions that he has, of any class. */
  public List<Condition> heart() {
    return where(condition -> answerTo(condition) == Answer.YES && condition.risk().isPresent());
  }

  private static List<Condition> where(Predicate<Condition> wanted) {
    var found = new ArrayList<Condition>();
    for (Condition condition : ALL) {
      if (wanted.test(condition)) {
        found.add(condition);
      }
    }
    return Collections.unmodifiableList(found);
  }

  /** The oldest answer that matters for a preparation. */
  public Optional<Instant> oldest(Preparation preparation) {
    Instant oldest = Instant.MAX;
    for (Map.Entry<Condition, Answered> entry : answers.entrySet()) {
      Instant at = entry.getValue().at();
      if (at.isBefore(oldest) && entry.getKey().findingFor(preparation) != Finding.NOTHING) {
        oldest = at;
      }
    }
    return oldest.equals(Instant.MAX) ? Optional.empty() : Optional.of(oldest);
  }

  /** The gravest cardiac class of what he has; none while a heart question is open. */
  public Optional<CardiacRisk> cardiacRisk() {
    Optional<CardiacRisk> gravest =
        heart().stream()
            .flatMap(condition -> condition.risk().stream())
            .max(Comparator.naturalOrder());
    boolean isOpen =
        !where(one -> answerTo(one) == Answer.NOT_KNOWN && one.risk().isPresent()).isEmpty();
    if (isOpen && !gravest.equals(Optional.of(CardiacRisk.HIGH))) {
      return Optional.empty();
    }
    return gravest.or(() -> Optional.of(CardiacRisk.LOW));
  }
}
