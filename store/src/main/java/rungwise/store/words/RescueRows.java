package rungwise.store.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.TableRecord;
import rungwise.clinic.course.CourseFact;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.rescue.RescueWord;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.quantities.Acidity;
import rungwise.quantities.Concentration;
import rungwise.quantities.GasPressure;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.RescueWrittenOverriddenRecord;
import rungwise.store.schema.tables.records.RescueWrittenRecord;

/** What was written in rescues, as rows and back. */
public final class RescueRows {

  /** What a row says. */
  private enum Kind {
    GIVEN,
    MEASURED,
    GAS_TAKEN,
    PREPARED,
    TICKED,
    STRUCK
  }

  private RescueRows() {}

  public static List<TableRecord<?>> rows(CourseFact.RescueWritten written) {
    RescueWrittenRecord row = row(written.word());
    row.setCallEntry(written.call().text());
    var rows = new ArrayList<TableRecord<?>>();
    rows.add(row);
    if (written.word() instanceof RescueWord.Prepared prepared) {
      for (LogVerdict.Kind reason : prepared.overridden()) {
        var line = new RescueWrittenOverriddenRecord();
        line.setLine(rows.size());
        line.setReason(Tokens.of(reason));
        rows.add(line);
      }
    }
    return rows;
  }

  private static RescueWrittenRecord row(RescueWord word) {
    return switch (word) {
      case RescueWord.Given given -> given(given);
      case RescueWord.Measured measured -> {
        RescueWrittenRecord row = of(Kind.MEASURED);
        row.setAtInstant(measured.at());
        fill(row, measured.vitals());
        yield row;
      }
      case RescueWord.GasTaken gas -> {
        RescueWrittenRecord row = of(Kind.GAS_TAKEN);
        row.setAtInstant(gas.at());
        row.setOxygen(gas.oxygen().picopascals());
        row.setCarbonDioxide(gas.carbonDioxide().picopascals());
        row.setAcidity(gas.ph().thousandths());
        yield row;
      }
      case RescueWord.Prepared prepared -> {
        RescueWrittenRecord row = of(Kind.PREPARED);
        row.setAtInstant(prepared.at());
        row.setDosePicograms(prepared.dose().picograms());
        row.setSecondPerson(prepared.secondPerson().orElse(null));
        yield row;
      }
      case RescueWord.Ticked ticked -> {
        RescueWrittenRecord row = of(Kind.TICKED);
        row.setAtInstant(ticked.at());
        row.setProtocolVersion(ticked.version());
        row.setStepLine(ticked.line());
        row.setStepWords(ticked.words());
        row.setSpeaker(Tokens.of(ticked.by()));
        yield row;
      }
      case RescueWord.Struck struck -> of(Kind.STRUCK);
    };
  }

  private static RescueWrittenRecord given(RescueWord.Given given) {
    RescueWrittenRecord row = of(Kind.GIVEN);
    row.setAtInstant(given.at());
    row.setDosePicograms(given.dose().map(Mass::picograms).orElse(null));
    row.setStrength(given.strength().map(Concentration::picogramsPerMicrolitre).orElse(null));
    row.setVolumeMicrolitres(given.volume().map(Volume::microlitres).orElse(null));
    row.setSide(Tokens.of(given.side()));
    given.before().ifPresent(vitals -> fill(row, vitals));
    row.setGivenBy(given.givenBy());
    row.setSecondPerson(given.checkedBy().orElse(null));
    return row;
  }

  private static RescueWrittenRecord of(Kind kind) {
    var row = new RescueWrittenRecord();
    row.setWord(Tokens.of(kind));
    return row;
  }

  private static void fill(RescueWrittenRecord row, Vitals vitals) {
    row.setSystolic((short) vitals.systolic());
    row.setDiastolic((short) vitals.diastolic());
    row.setPulse((short) vitals.pulse());
  }

  public static CourseFact written(RescueWrittenRecord row, List<String> overridden) {
    return new CourseFact.RescueWritten(
        new EntryId(row.getCallEntry()),
        switch (Tokens.read(Kind.class, row.getWord())) {
          case GIVEN -> given(row);
          case MEASURED -> new RescueWord.Measured(row.getAtInstant(), vitals(row).orElseThrow());
          case GAS_TAKEN ->
              new RescueWord.GasTaken(
                  row.getAtInstant(),
                  new GasPressure(row.getOxygen()),
                  new GasPressure(row.getCarbonDioxide()),
                  new Acidity(row.getAcidity()));
          case PREPARED ->
              new RescueWord.Prepared(
                  row.getAtInstant(),
                  Mass.ofPicograms(row.getDosePicograms()),
                  Optional.ofNullable(row.getSecondPerson()),
                  overridden.stream()
                      .map(reason -> Tokens.read(LogVerdict.Kind.class, reason))
                      .toList());
          case TICKED ->
              new RescueWord.Ticked(
                  row.getProtocolVersion(),
                  row.getStepLine(),
                  row.getStepWords(),
                  row.getAtInstant(),
                  Tokens.read(Speaker.class, row.getSpeaker()));
          case STRUCK -> new RescueWord.Struck();
        });
  }

  private static RescueWord given(RescueWrittenRecord row) {
    return new RescueWord.Given(
        row.getAtInstant(),
        Optional.ofNullable(row.getDosePicograms()).map(Mass::ofPicograms),
        Optional.ofNullable(row.getStrength()).map(Concentration::new),
        Optional.ofNullable(row.getVolumeMicrolitres()).map(Volume::ofMicrolitres),
        Tokens.read(Side.class, row.getSide()),
        vitals(row),
        row.getGivenBy(),
        Optional.ofNullable(row.getSecondPerson()));
  }

  private static Optional<Vitals> vitals(RescueWrittenRecord row) {
    return row.getSystolic() == null
        ? Optional.empty()
        : Optional.of(new Vitals(row.getSystolic(), row.getDiastolic(), row.getPulse()));
  }
}
