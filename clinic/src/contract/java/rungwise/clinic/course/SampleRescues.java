package rungwise.clinic.course;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.RescueWritten;
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

/** Everything that can be written in a rescue, with all that it may hold. */
final class SampleRescues {

  private static final Instant AT = Instant.parse("2026-03-02T23:15:00.123Z");
  private static final Mass DOSE = Mass.ofPicograms(200_000_000);
  private static final Vitals VITALS = new Vitals(152, 91, 58);

  private SampleRescues() {}

  static List<CourseFact> all(EntryId call) {
    var words = new ArrayList<RescueWord>();
    for (Side side : Side.values()) {
      words.add(
          new RescueWord.Given(
              AT,
              Optional.of(DOSE),
              Optional.of(Concentration.parse("100 mcg/mL").orThrow()),
              Optional.of(Volume.ofMicrolitres(2_000)),
              side,
              Optional.of(VITALS),
              "\"Dr\"; 'X' \u2265",
              Optional.of("a second reader")));
      words.add(
          new RescueWord.Given(
              AT,
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              side,
              Optional.empty(),
              "somebody there",
              Optional.empty()));
    }
    addOthers(words);
    return words.stream().<CourseFact>map(word -> new RescueWritten(call, word)).toList();
  }

  private static void addOthers(List<RescueWord> words) {
    words.add(new RescueWord.Measured(AT, VITALS));
    words.add(
        new RescueWord.GasTaken(
            AT,
            GasPressure.parse("3.3 kPa").orThrow(),
            GasPressure.ofMmhg(65),
            new Acidity(7_185)));
    words.add(new RescueWord.Prepared(AT, DOSE, Optional.empty(), List.of()));
    words.add(
        new RescueWord.Prepared(
            AT, DOSE, Optional.of("a reader"), List.of(LogVerdict.Kind.values())));
    for (Speaker speaker : Speaker.values()) {
      words.add(new RescueWord.Ticked(2, 3, "He is called again.", AT, speaker));
    }
    words.add(new RescueWord.Struck());
  }
}
