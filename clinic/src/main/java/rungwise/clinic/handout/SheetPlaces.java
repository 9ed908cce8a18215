package rungwise.clinic.handout;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.dosing.history.Spot;

/**
 * Where he may inject, as he sees it when he looks down. The record's clock faces him, so left and
 * right of it are changed over; the side is his own in both.
 */
final class SheetPlaces {

  private static final int HOURS = 12;

  private final PatientWords words;

  SheetPlaces(Language language) {
    this.words = PatientWords.in(language);
  }

  Map<Slot, String> filling(CourseFile file) {
    var filling = new EnumMap<Slot, String>(Slot.class);
    filling.put(Slot.PLACES, allowed());
    last(file)
        .ifPresent(
            spot -> {
              filling.put(Slot.PLACE_LAST, words(spot));
              filling.put(Slot.PLACE_NEXT, words(spot.next()));
            });
    return filling;
  }

  private static Optional<Spot> last(CourseFile file) {
    return file.reports().stream()
        .map(Written::fact)
        .filter(report -> report.details().spot().isPresent())
        .max(Comparator.comparing(report -> report.injectedAt()))
        .flatMap(report -> report.details().spot());
  }

  private String allowed() {
    return words.text(
        PatientWord.PART_PLACES,
        Map.of(
            Slot.LEFT_HOURS, hours(Spot.Side.HIS_LEFT),
            Slot.RIGHT_HOURS, hours(Spot.Side.HIS_RIGHT)));
  }

  private String hours(Spot.Side side) {
    List<String> hours =
        IntStream.rangeClosed(1, HOURS)
            .filter(hour -> Spot.standing(hour) == Spot.Standing.RIGHT)
            .filter(hour -> new Spot(side, hour).isOnItsSide())
            .map(SheetPlaces::seenFromAbove)
            .sorted()
            .mapToObj(Integer::toString)
            .toList();
    return hours.stream()
        .reduce(
            (first, second) ->
                words.text(PatientWord.PART_OR, Map.of(Slot.FIRST, first, Slot.SECOND, second)))
        .orElseThrow();
  }

  private String words(Spot spot) {
    PatientWord side =
        switch (spot.side()) {
          case HIS_LEFT -> PatientWord.PART_LEFT;
          case HIS_RIGHT -> PatientWord.PART_RIGHT;
        };
    String hour = Integer.toString(seenFromAbove(spot.hour()));
    return words.text(side, Map.of(Slot.HOUR, hour));
  }

  /** The hour of the same place on the clock of who looks down at himself. */
  private static int seenFromAbove(int facing) {
    return facing == HOURS ? HOURS : HOURS - facing;
  }
}
