package rungwise.checks.rows;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import rungwise.checks.topics.Answer;
import rungwise.checks.topics.InputFault;

/** How near an answer must come to the expected one, as the row's tolerance says it. */
sealed interface Tolerance {

  /** The same words, or the same numbers to the last digit. */
  record Exact() implements Tolerance {}

  /** One allowed distance for each number; the last also holds for all further numbers. */
  record Distances(List<BigDecimal> allowed) implements Tolerance {}

  /** A part of the expected number, in percent. */
  record Percent(BigDecimal percent) implements Tolerance {}

  /** Both ends included, whatever is expected between them. */
  record Between(BigDecimal low, BigDecimal high) implements Tolerance {}

  /** The expected number, written ">70", is a bound that is not reached itself. */
  record Above() implements Tolerance {}

  /** The answer holds the expected words, whatever stands around them. */
  record Contains() implements Tolerance {}

  Pattern NUMBER = Pattern.compile("[-+]?[0-9]+(?:\\.[0-9]+)?(?:[eE][-+]?[0-9]+)?");
  Pattern LEADING_DISTANCES =
      Pattern.compile("(" + NUMBER + "(?:\\|" + NUMBER + ")*)(?:$|[ ].*)", Pattern.DOTALL);
  Pattern INTERVAL =
      Pattern.compile("\\[(" + NUMBER + "),[ ]?(" + NUMBER + ")\\].*", Pattern.DOTALL);
  Pattern PERCENT = Pattern.compile("(" + NUMBER + ")[ ](?:pct|%).*", Pattern.DOTALL);
  String SEPARATORS = "\\||;|\\.\\.";

  /**
   * Reads a tolerance. Words behind the first say why and change nothing.
   *
   * @throws InputFault if it is of no known form
   */
  static Tolerance parse(String text) {
    var interval = INTERVAL.matcher(text);
    if (interval.matches()) {
      return new Between(new BigDecimal(interval.group(1)), new BigDecimal(interval.group(2)));
    }
    var percent = PERCENT.matcher(text);
    if (percent.matches()) {
      return new Percent(new BigDecimal(percent.group(1)));
    }
    var distances = LEADING_DISTANCES.matcher(text);
    if (distances.matches()) {
      List<BigDecimal> allowed =
          Arrays.stream(distances.group(1).split("\\|")).map(BigDecimal::new).toList();
      if (allowed.stream().anyMatch(one -> one.signum() < 0)) {
        throw new InputFault("the tolerance is below 0: \"" + text + "\"");
      }
      return new Distances(allowed);
    }
    return switch (text.split("[ ]", 2)[0]) {
      case "exact", "qualitative", "policy", "n/a" -> new Exact();
      case "contains" -> new Contains();
      case "lower" -> new Above();
      default -> throw new InputFault("the tolerance is not understood: \"" + text + "\"");
    };
  }

  /** Whether an answer is near enough to what a row expects. */
  default boolean accepts(Answer answer, String expected) {
    return switch (answer) {
      case Answer.Words words -> acceptsWords(words.text(), expected);
      case Answer.OneNumber number -> acceptsAll(List.of(number.value()), numbersIn(expected));
      case Answer.Numbers numbers -> acceptsAll(numbers.values(), numbersIn(expected));
      case Answer.Named named -> acceptsNamed(named.values(), namedIn(expected));
      case Answer.NotBuilt none -> false;
    };
  }

  private boolean acceptsWords(String answer, String expected) {
    return this instanceof Contains ? answer.contains(expected) : answer.equals(expected);
  }

  private boolean acceptsNamed(Map<String, BigDecimal> answer, Map<String, BigDecimal> expected) {
    return expected.keySet().stream().allMatch(answer::containsKey)
        && acceptsAll(
            expected.keySet().stream().sorted().map(answer::get).toList(),
            expected.keySet().stream().sorted().map(expected::get).toList());
  }

  private boolean acceptsAll(List<BigDecimal> answers, List<BigDecimal> expected) {
    if (answers.size() != expected.size() || answers.isEmpty()) {
      return false;
    }
    for (int i = 0; i < answers.size(); i++) {
      if (!acceptsNumber(i, answers.get(i), expected.get(i))) {
        return false;
      }
    }
    return true;
  }

  private boolean acceptsNumber(int place, BigDecimal answer, BigDecimal expected) {
    BigDecimal distance = answer.subtract(expected).abs();
    return switch (this) {
      case Exact exact -> distance.signum() == 0;
      case Contains contains -> distance.signum() == 0;
      case Above above -> answer.compareTo(expected) > 0;
      case Between between ->
          answer.compareTo(between.low()) >= 0 && answer.compareTo(between.high()) <= 0;
      case Percent part ->
          distance.compareTo(expected.abs().multiply(part.percent()).movePointLeft(2)) <= 0;
      case Distances distances ->
          distance.compareTo(
                  distances.allowed().get(Math.min(place, distances.allowed().size() - 1)))
              <= 0;
    };
  }

  private static List<BigDecimal> numbersIn(String expected) {
    var numbers = new ArrayList<BigDecimal>();
    for (String part : expected.split(SEPARATORS, -1)) {
      String text = part.strip().replaceFirst("^>", "");
      if (!NUMBER.matcher(text).matches()) {
        return List.of();
      }
      numbers.add(new BigDecimal(text));
    }
    return List.copyOf(numbers);
  }

  private static Map<String, BigDecimal> namedIn(String expected) {
    var named = new HashMap<String, BigDecimal>();
    for (String part : expected.split(";", -1)) {
      int equals = part.indexOf('=');
      Optional<BigDecimal> number =
          equals < 0
              ? Optional.empty()
              : numbersIn(part.substring(equals + 1)).stream().findFirst();
      if (number.isEmpty()) {
        throw new InputFault("the expected value \"" + part + "\" is not a name=number");
      }
      named.put(part.substring(0, equals).strip(), number.get());
    }
    return Map.copyOf(named);
  }
}
