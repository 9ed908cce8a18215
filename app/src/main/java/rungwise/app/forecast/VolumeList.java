package rungwise.app.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Volumes as they are typed: from, to and step with colons between, or one after another. */
final class VolumeList {

  private static final int PARTS = 3;
  private static final String HOW =
      ": write from, to and step in mL, such as 0.05:0.5:0.05, or volumes such as 0.1,0.2";

  private VolumeList() {}

  static Reading<List<Volume>> read(String text) {
    boolean isRange = text.contains(":");
    List<Reading<Volume>> readings =
        Arrays.stream(text.split(isRange ? ":" : ",", -1)).map(Volume::parseMillilitres).toList();
    List<String> faults = readings.stream().flatMap(one -> one.faults().stream()).toList();
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults.stream().map(fault -> "--volumes: " + fault).toList());
    }
    List<Volume> volumes = readings.stream().map(Reading::orThrow).toList();
    if (volumes.stream().anyMatch(volume -> volume.isMoreThan(Barrels.LARGEST))) {
      return Reading.refused(
          "--volumes " + text + ": no syringe holds more than " + Barrels.LARGEST + HOW);
    }
    if (isRange && volumes.size() != PARTS) {
      return Reading.refused("--volumes " + text + HOW);
    }
    return isRange
        ? range(text, volumes.get(0), volumes.get(1), volumes.get(2))
        : Reading.of(volumes);
  }

  private static Reading<List<Volume>> range(String text, Volume from, Volume to, Volume step) {
    var volumes = new ArrayList<Volume>();
    for (Volume volume = from; !volume.isMoreThan(to); volume = volume.plus(step)) {
      volumes.add(volume);
    }
    return volumes.isEmpty()
        ? Reading.refused("--volumes " + text + " begin above their end" + HOW)
        : Reading.of(volumes);
  }
}
