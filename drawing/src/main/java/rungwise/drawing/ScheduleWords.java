package rungwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.drawing.Key.Entry;
import rungwise.quantities.Volume;

/** What the drawing of a schedule shows, in words. */
final class ScheduleWords {

  private ScheduleWords() {}

  /** The sentences below the drawing: the dose in force, the proposal, what is past and closed. */
  static List<Entry> key(Schedule schedule) {
    var entries = new ArrayList<Entry>();
    schedule
        .first(Schedule.State.NOW)
        .map(step -> Entry.of(Sign.NOW, "Now, signed: " + step.words() + closed(step) + "."))
        .ifPresent(entries::add);
    schedule
        .first(Schedule.State.PROPOSED)
        .map(step -> Entry.of(Sign.NEXT, "Next, proposed, not signed: " + step.words() + "."))
        .ifPresent(entries::add);
    past(schedule).map(words -> Entry.of(Sign.PAST, words)).ifPresent(entries::add);
    schedule
        .first(Schedule.State.CLOSED)
        .map(step -> "Closed, may not be given: " + step.volume() + " and above.")
        .map(words -> Entry.of(Sign.CLOSED, words))
        .ifPresent(entries::add);
    schedule
        .maximum()
        .map(volume -> Entry.of(Sign.LIMIT, "Maximum, never to be passed: " + volume + "."))
        .ifPresent(entries::add);
    return List.copyOf(entries);
  }

  private static String closed(Schedule.Step step) {
    return step.is(Schedule.State.CLOSED) ? "; it is closed" : "";
  }

  private static Optional<String> past(Schedule schedule) {
    List<Volume> past =
        schedule.steps().stream()
            .filter(step -> step.is(Schedule.State.PAST))
            .map(Schedule.Step::volume)
            .toList();
    return past.isEmpty()
        ? Optional.empty()
        : Optional.of("Injected before: " + listed(past) + ".");
  }

  static String all(Schedule schedule) {
    List<Volume> volumes = schedule.steps().stream().map(Schedule.Step::volume).toList();
    String key = key(schedule).stream().map(Entry::words).collect(Collectors.joining(" "));
    return ("Titration schedule, drawn to scale. Steps: " + listed(volumes) + ". " + key).strip();
  }

  private static String listed(List<Volume> volumes) {
    return volumes.stream().map(Volume::toString).collect(Collectors.joining(", "));
  }
}
