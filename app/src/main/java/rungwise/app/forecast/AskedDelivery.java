package rungwise.app.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rungwise.dosing.response.Delivery;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * With what a dose is drawn, and how much strength its vial may have lost.
 *
 * @param barrel a syringe with lines
 * @param mostLost the largest part of the label's strength that may be gone, 0 or more
 */
record AskedDelivery(Barrel barrel, double mostLost) {

  /** Above it, what is drawn could be nothing. */
  private static final int MOST_PERCENT = 99;

  private static final Pattern PART = Pattern.compile("0(?:\\.[0-9]{1,6})?");

  /** A delivery that every volume can be drawn for, or all that is wrong with it. */
  static Reading<AskedDelivery> read(String token, String lost, List<Volume> volumes) {
    var faults = new ArrayList<String>();
    if (!PART.matcher(lost).matches()) {
      faults.add(
          "--lost: \""
              + lost
              + "\" was given: write a part of 1, below 1, such as 0.1 for a tenth");
    }
    Optional<Barrel> barrel =
        Barrels.of(token).filter(one -> one.marking().graduationVolume().isPresent());
    if (barrel.isEmpty()) {
      faults.add(
          "--delivery: \"" + token + "\" is no syringe with lines: give one of " + barrels());
    }
    barrel.ifPresent(
        one ->
            volumes.stream().flatMap(volume -> unfit(one, volume).stream()).forEach(faults::add));
    return faults.isEmpty()
        ? Reading.of(new AskedDelivery(barrel.orElseThrow(), Double.parseDouble(lost)))
        : new Reading.Refused<>(faults);
  }

  private static Optional<String> unfit(Barrel barrel, Volume volume) {
    if (!barrel.hasMarkAt(volume)) {
      return Optional.of(
          "--volumes: "
              + volume
              + " is on no line of a "
              + barrel.words()
              + ": give volumes that can be drawn in it");
    }
    boolean isMeasurable =
        DrawingError.of(volume, barrel)
            .filter(error -> !error.isMoreThan(MOST_PERCENT))
            .isPresent();
    return isMeasurable
        ? Optional.empty()
        : Optional.of(
            "--volumes: the drawing error of "
                + volume
                + " in a "
                + barrel.words()
                + " is as large as the volume: give a larger volume or a smaller syringe");
  }

  private static String barrels() {
    return Barrels.all().stream()
        .filter(one -> one.marking().graduationVolume().isPresent())
        .map(one -> one.token() + " (" + one.words() + ")")
        .collect(Collectors.joining(", "));
  }

  /** The error budget of a volume. */
  Delivery of(Volume volume) {
    return Delivery.of(DrawingError.of(volume, barrel).orElseThrow(), mostLost);
  }
}
