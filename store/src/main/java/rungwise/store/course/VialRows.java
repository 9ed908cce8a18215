package rungwise.store.course;

import java.time.LocalTime;
import java.util.Optional;
import rungwise.clinic.course.Vial;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;
import rungwise.store.schema.tables.records.VialReceivedRecord;

/** What a vial's label says, as a row and back. */
final class VialRows {

  private VialRows() {}

  static VialReceivedRecord row(Vial vial) {
    VialDates dates = vial.dates();
    var row = new VialReceivedRecord();
    row.setLot(vial.lot());
    row.setComposition(vial.composition());
    row.setMadeOn(dates.made().orElse(null));
    row.setBeyondUseDate(dates.beyondUse());
    row.setOpenedOn(dates.opened().map(Opening::day).orElse(null));
    row.setOpenedClock(
        dates.opened().flatMap(Opening::clock).map(LocalTime::toString).orElse(null));
    row.setDaysInUse(dates.daysInUse().orElse(null));
    row.setDevice(vial.device());
    return row;
  }

  static Vial read(VialReceivedRecord row) {
    return new Vial(
        row.getLot(),
        row.getComposition(),
        new VialDates(
            Optional.ofNullable(row.getMadeOn()),
            row.getBeyondUseDate(),
            opening(row),
            Optional.ofNullable(row.getDaysInUse())),
        row.getDevice());
  }

  private static Optional<Opening> opening(VialReceivedRecord row) {
    return Optional.ofNullable(row.getOpenedOn())
        .map(
            day ->
                new Opening(day, Optional.ofNullable(row.getOpenedClock()).map(LocalTime::parse)));
  }
}
