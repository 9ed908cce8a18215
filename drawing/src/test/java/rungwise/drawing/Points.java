package rungwise.drawing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import rungwise.drawing.TimeLine.Note;
import rungwise.drawing.TimeLine.Point;
import rungwise.drawing.TimeLine.SoftAfter;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Invented injections. */
final class Points {

  private static final LocalDate FIRST = LocalDate.of(2026, 1, 3);

  private Points() {}

  static SoftAfter exactly(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  static SoftAfter atLeast(long minutes) {
    return new SoftAfter.AtLeast(TimeSpan.ofMinutes(minutes));
  }

  static SoftAfter between(long from, long before) {
    return new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before));
  }

  static SoftAfter notKnown() {
    return new SoftAfter.NotKnown();
  }

  static Point point(int day, long microlitres, int grade, SoftAfter softAfter, Note... notes) {
    Volume drawn = Volume.ofMicrolitres(microlitres);
    return new Point(FIRST.plusDays(day), drawn, grade, softAfter, Set.of(notes));
  }

  /** One that needs no attention. */
  static Point calm(int day) {
    return point(day, 100, 3, exactly(40));
  }

  static TimeLine line(Point... points) {
    return new TimeLine(List.of(points));
  }

  /** So many injections of every kind. */
  static TimeLine random(long seed, int count) {
    var random = new Random(seed);
    var points = new ArrayList<Point>();
    for (int day = 0; day < count; day++) {
      int minutes = random.nextInt(400);
      SoftAfter softAfter =
          switch (random.nextInt(4)) {
            case 0 -> exactly(minutes);
            case 1 -> atLeast(minutes);
            case 2 -> between(minutes, minutes + 60);
            default -> notKnown();
          };
      Note[] notes = random.nextBoolean() ? new Note[] {Note.IN_CLINIC} : new Note[0];
      points.add(point(3 * day, 50 + 10L * random.nextInt(30), day % 5, softAfter, notes));
    }
    return new TimeLine(points);
  }
}
