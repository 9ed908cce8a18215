package rungwise.drawing;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.drawing.Key.Entry;

/** What the drawing of a time line shows, in words. */
final class TimeLineWords {

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.US);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.US);

  private TimeLineWords() {}

  /** "3 Mar 2026". */
  static String date(LocalDate date) {
    return DATE.format(date);
  }

  /** "3 Mar". */
  static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** What the drawing shows at a glance, what is most urgent first. */
  static String summary(TimeLine timeLine) {
    String first = date(timeLine.points().getFirst().date());
    String last = date(timeLine.points().getLast().date());
    int count = timeLine.points().size();
    return Stream.of(
            emergencies(timeLine),
            Optional.of(
                count == 1
                    ? "1 injection, " + last + "."
                    : count + " injections, " + first + " to " + last + "."),
            notDrawn(timeLine),
            Optional.of("Last: " + point(timeLine.points().getLast())))
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" "));
  }

  /** The sentences below the drawing, what is most urgent first. */
  static List<Entry> key(TimeLine timeLine) {
    var entries = new ArrayList<Entry>();
    emergencies(timeLine).map(Entry::loud).ifPresent(entries::add);
    entries.add(Entry.of(Sign.NOW, "Last: " + point(timeLine.points().getLast())));
    notDrawn(timeLine).map(words -> Entry.of(Sign.NONE, words)).ifPresent(entries::add);
    return List.copyOf(entries);
  }

  /** What the signs mean that stand in this drawing. */
  static List<Entry> signs(TimeLine timeLine) {
    List<TimeLine.Point> drawn = timeLine.drawn();
    Stream<Entry> clinic =
        drawn.stream()
            .filter(TimeLine.Point::isInClinic)
            .limit(1)
            .map(point -> Entry.of(Sign.CLINIC, "In the clinic."));
    Stream<Entry> shapes =
        drawn.stream()
            .map(point -> shape(point.softAfter()))
            .flatMap(Optional::stream)
            .distinct()
            .sorted()
            .map(words -> Entry.of(Sign.NONE, words));
    return Stream.concat(clinic, shapes).toList();
  }

  private static Optional<String> shape(TimeLine.SoftAfter softAfter) {
    return switch (softAfter) {
      case TimeLine.SoftAfter.Exactly exactly -> Optional.empty();
      case TimeLine.SoftAfter.AtLeast atLeast ->
          Optional.of("Arrow up: still firm when last seen, end not known.");
      case TimeLine.SoftAfter.Between between ->
          Optional.of("Hollow box: soft sometime within it.");
      case TimeLine.SoftAfter.NotKnown notKnown ->
          Optional.of("Question mark: duration not known.");
    };
  }

  /** Every emergency there ever was, drawn or not, the newest first. */
  static Optional<String> emergencies(TimeLine timeLine) {
    List<String> all =
        timeLine.points().reversed().stream()
            .filter(TimeLine.Point::isEmergency)
            .map(point -> date(point.date()) + " (" + point.softAfter().words() + ")")
            .toList();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of("Emergency, 4 h or more, known or possible: " + String.join("; ", all) + ".");
  }

  /** The last one, and how many are left out where so many are drawn at most. */
  static String last(TimeLine timeLine, int mostDrawn) {
    String last = "Last: " + point(timeLine.points().getLast());
    return notDrawn(Math.max(0, timeLine.points().size() - mostDrawn))
        .map(words -> last + " " + words)
        .orElse(last);
  }

  private static Optional<String> notDrawn(TimeLine timeLine) {
    return notDrawn(timeLine.notDrawn());
  }

  private static Optional<String> notDrawn(int count) {
    if (count == 0) {
      return Optional.empty();
    }
    String are = count == 1 ? " earlier injection is" : " earlier injections are";
    return Optional.of(count + are + " not drawn.");
  }

  /** "3 Mar 2026, at home: 0.2 mL, rigidity 3, soft after 45 min." */
  static String point(TimeLine.Point point) {
    return date(point.date())
        + (point.isInClinic() ? ", in the clinic: " : ", at home: ")
        + point.drawn()
        + ", rigidity "
        + point.grade()
        + ", "
        + point.softAfter().words()
        + (point.isEmergency() ? ", emergency." : ".");
  }

  static List<String> all(TimeLine timeLine) {
    return Stream.concat(
            Stream.of(summary(timeLine)),
            timeLine.drawn().reversed().stream().map(TimeLineWords::point))
        .toList();
  }
}
