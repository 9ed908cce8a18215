package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What the product answers to a row. */
public sealed interface Answer {

  /** A word or a sentence. */
  record Words(String text) implements Answer {
    @Override
    public String toString() {
      return text;
    }
  }

  /** One number, in the unit that the row names. */
  record OneNumber(BigDecimal value) implements Answer {
    public OneNumber {
      value = value.stripTrailingZeros();
    }

    @Override
    public String toString() {
      return value.toPlainString();
    }
  }

  /** Several numbers in order. */
  record Numbers(List<BigDecimal> values) implements Answer {
    public Numbers {
      values = List.copyOf(values);
    }

    @Override
    public String toString() {
      return values.stream().map(BigDecimal::toPlainString).collect(Collectors.joining("|"));
    }
  }

  /** Several numbers by name. */
  record Named(Map<String, BigDecimal> values) implements Answer {
    public Named {
      values = Map.copyOf(values);
    }

    @Override
    public String toString() {
      return values.entrySet().stream()
          .map(entry -> entry.getKey() + "=" + entry.getValue().toPlainString())
          .sorted()
          .collect(Collectors.joining(";"));
    }
  }

  /** The product has no such thing yet. */
  record NotBuilt(String why) implements Answer {}

  static Answer words(String text) {
    return new Words(text);
  }

  static Answer yesOrNo(boolean yes) {
    return new Words(Boolean.toString(yes));
  }

  static Answer number(BigDecimal value) {
    return new OneNumber(value);
  }

  static Answer number(long value) {
    return new OneNumber(BigDecimal.valueOf(value));
  }

  /**
   * A number that the product works out with floating point.
   *
   * @throws InputFault if it is not a finite number
   */
  static Answer number(double value) {
    if (!Double.isFinite(value)) {
      throw new InputFault("the answer is not a finite number: " + value);
    }
    return new OneNumber(BigDecimal.valueOf(value));
  }
}
