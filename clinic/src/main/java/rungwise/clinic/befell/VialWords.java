package rungwise.clinic.befell;

import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.befell.VialWord.Gone;
import rungwise.clinic.befell.VialWord.Judged;
import rungwise.clinic.befell.VialWord.Put;
import rungwise.clinic.befell.VialWord.Warm;
import rungwise.dosing.supply.Storage;

/** What befell a vial, in words. */
public final class VialWords {

  private static final String NOBODY_KNOWS = "nobody knows how ";

  private VialWords() {}

  /** Such as "Vial was warm on 1 Mar 2026: up to 25 °C, 5 hours". */
  public static String of(VialWord word) {
    return switch (word) {
      case Warm warm ->
          "Vial was warm"
              + since(word)
              + ": "
              + warm.celsius()
                  .map(most -> "up to " + most + " \u00b0C")
                  .orElse(NOBODY_KNOWS + "warm")
              + ", "
              + hours(warm);
      case Put put -> "Vial was " + put.place().words() + since(word);
      case Gone gone -> "Vial is gone: " + gone.how().words() + since(word);
      case Judged judged -> "A prescriber judged that the vial may be used, as its label says";
    };
  }

  private static String since(VialWord word) {
    return word.since().map(day -> " on " + ClinicTime.words(day)).orElse("");
  }

  private static String hours(Warm warm) {
    Optional<Integer> least = warm.least();
    Optional<Integer> most = warm.most();
    if (least.isPresent() && least.equals(most)) {
      return counted(least.get());
    }
    if (least.isPresent() && most.isPresent()) {
      return least.get() + " to " + counted(most.get());
    }
    return least
        .map(hours -> counted(hours) + " or more")
        .or(() -> most.map(hours -> counted(hours) + " at most"))
        .orElse(NOBODY_KNOWS + "long");
  }

  private static String counted(int hours) {
    return hours == 1 ? "1 hour" : hours + " hours";
  }

  /** What the general rule says of a vial that is kept in the refrigerator, if it was warm. */
  public static Optional<String> byRule(VialWord word) {
    return word instanceof Warm warm
        ? Optional.of(
            "Of a vial that is kept in the refrigerator: "
                + warm.spell().by(Storage.REFRIGERATOR.celsius().value().most()).words()
                + ".")
        : Optional.empty();
  }
}
