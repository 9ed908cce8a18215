package rungwise.dosing.predictive;

import java.util.OptionalDouble;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

/** Between which times a useful response lasted, as far as its report says. */
final class Reported {

  private Reported() {}

  /** Whether something is known of the time. */
  static boolean isTimed(Trial trial) {
    return trial.grade().isUseful() && !(trial.lasted() instanceof Lasted.NotRecorded);
  }

  /** Whether the time is known to the minute. */
  static boolean isExact(Trial trial) {
    return isTimed(trial) && trial.lasted() instanceof Lasted.Exactly;
  }

  /** In minutes; nothing where nothing is known. */
  static OptionalDouble shortest(Trial trial) {
    if (!isTimed(trial)) {
      return OptionalDouble.empty();
    }
    return switch (trial.lasted()) {
      case Lasted.Exactly(double minutes) -> OptionalDouble.of(minutes);
      case Lasted.AtLeast(double minutes) -> OptionalDouble.of(minutes);
      case Lasted.Between(double from, double before) -> OptionalDouble.of(from);
      case Lasted.NotRecorded none -> OptionalDouble.empty();
    };
  }

  /** In minutes, infinite where it may have lasted for ever; nothing where nothing is known. */
  static OptionalDouble longest(Trial trial) {
    if (!isTimed(trial)) {
      return OptionalDouble.empty();
    }
    return switch (trial.lasted()) {
      case Lasted.Exactly(double minutes) -> OptionalDouble.of(minutes);
      case Lasted.AtLeast open -> OptionalDouble.of(Double.POSITIVE_INFINITY);
      case Lasted.Between(double from, double before) -> OptionalDouble.of(before);
      case Lasted.NotRecorded none -> OptionalDouble.empty();
    };
  }
}
