package rungwise.dosing.urgent.rescue;

import java.util.List;
import java.util.Optional;

/**
 * A value as it was typed, and as it was typed a second time where that was asked for.
 *
 * @param again the second typing, if there was one
 * @param <T> the kind of value
 */
public record Twice<T>(T value, Optional<T> again) {

  public static <T> Twice<T> once(T value) {
    return new Twice<>(value, Optional.empty());
  }

  public static <T> Twice<T> both(T value, T again) {
    return new Twice<>(value, Optional.of(again));
  }

  /**
   * What forbids to go by it: two typings that differ, whatever the value; and no second typing of
   * a value that must be typed twice.
   */
  List<Refusal> refusals(Asked asked, boolean mustBeTypedTwice) {
    if (again.isPresent()) {
      return again
          .filter(second -> !second.equals(value))
          .<Refusal>map(
              second -> new Refusal.TwoDiffer(asked, String.valueOf(value), String.valueOf(second)))
          .stream()
          .toList();
    }
    return mustBeTypedTwice
        ? List.of(new Refusal.TypeAgain(asked, String.valueOf(value)))
        : List.of();
  }
}
