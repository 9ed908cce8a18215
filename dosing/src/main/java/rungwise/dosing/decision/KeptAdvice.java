package rungwise.dosing.decision;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An advice as a signature keeps it.
 *
 * @param text the whole advice in words
 * @param values the same as values; empty in a record of before they were kept
 */
public record KeptAdvice(String text, Optional<DecisionValues> values) {

  private static final String DECISION = "decision: ";
  private static final String CHOICE = "choice: ";
  private static final String ENGINE = "engine: ";

  /** An advice, to be kept. */
  public static KeptAdvice of(Advice advice) {
    return new KeptAdvice(advice.record(), Optional.of(DecisionValues.of(advice)));
  }

  /** How the dose was chosen; empty if an old text does not say. */
  public Optional<String> choice() {
    return values.map(DecisionValues::choice).or(() -> line(CHOICE));
  }

  /** The version of the engine; empty if an old text does not say. */
  public Optional<String> engine() {
    return values.map(DecisionValues::engine).or(() -> line(ENGINE));
  }

  /** Whether an advice proposes what this one proposed. */
  public boolean proposesTheSameAs(Advice now) {
    return values
        .map(kept -> kept.isSameDecisionAs(DecisionValues.of(now)))
        .orElseGet(() -> line(DECISION).equals(Optional.of(now.decision().key())));
  }

  /**
   * In what an advice of today differs. Of an advice that was kept without values only the decision
   * with its volume can be compared, and the words.
   */
  public List<Difference> differencesTo(Advice now) {
    var found = new ArrayList<Difference>();
    values.ifPresentOrElse(
        kept -> found.addAll(kept.differencesTo(DecisionValues.of(now))),
        () -> decision(now).ifPresent(found::add));
    if (found.isEmpty()) {
      Difference.of(Difference.Kind.WORDS, withoutEngine(text), withoutEngine(now.record()))
          .ifPresent(found::add);
    }
    return found;
  }

  private Optional<Difference> decision(Advice now) {
    return line(DECISION)
        .flatMap(kept -> Difference.of(Difference.Kind.DECISION, kept, now.decision().key()));
  }

  private Optional<String> line(String name) {
    return text.lines()
        .filter(line -> line.startsWith(name))
        .reduce((earlier, later) -> later)
        .map(line -> line.substring(name.length()));
  }

  private static String withoutEngine(String text) {
    return text.replaceFirst("(?m)^" + ENGINE + ".*$", "").strip();
  }
}
