package rungwise.files;

import java.util.List;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.Predicted.Count;
import rungwise.dosing.predictive.Predicted.OfDuration;
import rungwise.dosing.predictive.Predicted.OfVolume;
import rungwise.dosing.predictive.Predicted.Range;
import rungwise.quantities.Volume;

/** What was reported beside what earlier reports of the same man foresaw, as a document. */
final class CheckDocument {

  private static final double MICROLITRES = 1000;

  private CheckDocument() {}

  /** One object; its keys are fixed. Volumes are in mL, durations in minutes. */
  static JsonObject of(Predicted predicted) {
    Predicted.Misses misses = predicted.misses();
    return JsonObject.empty()
        .with("patients", predicted.courses())
        .with("injections", predicted.injections())
        .with("ranges", misses.ranges())
        .with("missed", misses.missed())
        .with("missed_by_chance", misses.byChance())
        .with("missed_chance", predicted.moreMissed())
        .with("surprise", of(predicted.surprise()))
        .withObjects("volumes", predicted.volumes().stream().map(CheckDocument::of).toList())
        .withObjects("durations", predicted.durations().stream().map(CheckDocument::of).toList());
  }

  private static JsonObject of(Predicted.Surprise surprise) {
    return JsonObject.empty()
        .with("reported", surprise.reported())
        .with("rare", surprise.rare())
        .with("rare_by_chance", surprise.byChance())
        .withObjects("worst", surprise.worst().stream().map(CheckDocument::of).toList());
  }

  /** By his number, from 1: a population file names no man. */
  private static JsonObject of(Predicted.Man man) {
    return JsonObject.empty()
        .with("number", man.course() + 1)
        .with("rare", man.rare())
        .with("chance", man.chance());
  }

  private static JsonObject of(OfVolume volume) {
    List<JsonObject> grades = volume.grades().stream().map(count -> of(count)).toList();
    return JsonObject.empty()
        .with("above_ml", millilitres(volume.above()))
        .with("up_to_ml", millilitres(volume.upTo()))
        .with("injections", volume.injections())
        .withObjects("grades", grades)
        .with("useful", of(volume.useful()));
  }

  private static double millilitres(Volume volume) {
    return volume.microlitres() / MICROLITRES;
  }

  private static JsonObject of(Count count) {
    return foreseen(JsonObject.empty().with("reported", count.reported()), count.expected())
        .with("within", count.isWithin());
  }

  private static JsonObject of(OfDuration duration) {
    return foreseen(
            JsonObject.empty()
                .with("at_least_minutes", duration.minutes())
                .with("responses", duration.responses())
                .with("reported_surely", duration.reportedSurely())
                .with("reported_possibly", duration.reportedPossibly()),
            duration.expected())
        .with("within", duration.isWithin());
  }

  private static JsonObject foreseen(JsonObject of, Range range) {
    return of.with("low", range.low()).with("mean", range.middle()).with("high", range.high());
  }
}
