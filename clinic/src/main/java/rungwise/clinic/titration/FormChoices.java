package rungwise.clinic.titration;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.InjectionDetails;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Spot;
import rungwise.quantities.Reading;

/** What the forms about an injection ask in the same words, read in one place. */
public final class FormChoices {

  private static final String HOURS = "[1-9]|1[0-2]";

  private FormChoices() {}

  /** How firm it was, from the number of a grade. */
  public static Reading<Grade> grade(String text) {
    return Optional.of(text.strip())
        .filter(typed -> typed.matches("[0-4]"))
        .flatMap(typed -> Grade.of(Integer.parseInt(typed)))
        .map(Reading::of)
        .orElseGet(
            () -> Reading.refused("Choose how firm it was, from nothing happened to fully firm."));
  }

  /** What a form sends for it. */
  public static String token(SimpleCauses causes) {
    return causes.name().toLowerCase(Locale.ROOT);
  }

  /** Whether anything went wrong, which must not contradict what was ticked. */
  public static Reading<SimpleCauses> causes(String token, Set<Cause> wrong) {
    Optional<SimpleCauses> causes =
        Arrays.stream(SimpleCauses.values()).filter(one -> token(one).equals(token)).findFirst();
    if (causes.isEmpty()) {
      return Reading.refused(
          "Choose whether anything went wrong with the injection, or that nobody asked.");
    }
    if (!wrong.isEmpty() && causes.get() == SimpleCauses.NONE_FOUND) {
      return Reading.refused(
          "Nothing went wrong was chosen, and so was what went wrong: keep one of the two.");
    }
    return Reading.of(wrong.isEmpty() ? causes.get() : SimpleCauses.ONE_FOUND);
  }

  /** What went wrong, from the names of causes; others are left out. */
  public static Set<Cause> wrong(Set<String> names) {
    var causes = EnumSet.noneOf(Cause.class);
    for (Cause cause : Cause.values()) {
      if (names.contains(cause.name())) {
        causes.add(cause);
      }
    }
    return causes;
  }

  /** Pain from 0 to 10; empty if it was not said. */
  public static Reading<Optional<Integer>> pain(String text) {
    String typed = text.strip();
    if (typed.isEmpty()) {
      return Reading.of(Optional.empty());
    }
    return typed.matches("[0-9]{1,2}") && Integer.parseInt(typed) <= InjectionDetails.MOST_PAIN
        ? Reading.of(Optional.of(Integer.parseInt(typed)))
        : Reading.refused("Pain: a whole number from 0 to " + InjectionDetails.MOST_PAIN + ".");
  }

  /** Side and place on the clock; empty if neither was said. A bad place is kept, and told. */
  public static Reading<Optional<Spot>> spot(String side, String hour) {
    if (side.isBlank() && hour.isBlank()) {
      return Reading.of(Optional.empty());
    }
    Optional<Spot.Side> found =
        Arrays.stream(Spot.Side.values()).filter(one -> one.name().equals(side)).findFirst();
    if (found.isEmpty() || !hour.strip().matches(HOURS)) {
      return Reading.refused(
          "Give both the side and the place on the clock, such as his left and 2.");
    }
    Spot spot = new Spot(found.get(), Integer.parseInt(hour.strip()));
    if (!spot.isOnItsSide()) {
      return Reading.refused(
          spot.words()
              + " cannot be: seen by somebody who faces him, 1 to 5 are on his left and 7 to 11 on"
              + " his right.");
    }
    return switch (spot.standing()) {
      case RIGHT -> Reading.of(Optional.of(spot));
      case BESIDE_NERVES ->
          new Reading.Read<>(
              Optional.of(spot),
              List.of(spot.words() + " lies beside the nerves: 10 and 2, or 9 and 3, are right."));
      case NOT_ALLOWED ->
          new Reading.Read<>(
              Optional.of(spot),
              List.of(
                  spot.words()
                      + " is not an allowed place, and is kept as that. Nurse educator: teach the"
                      + " place again; 10 and 2, or 9 and 3, are right."));
    };
  }
}
