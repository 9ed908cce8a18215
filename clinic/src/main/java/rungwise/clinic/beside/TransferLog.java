package rungwise.clinic.beside;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntSupplier;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.ElsewhereWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.dosing.history.Before.Elsewhere;
import rungwise.dosing.history.Before.Opened;
import rungwise.dosing.history.Before.TakenOver;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/** What was told of a man who is taken over from elsewhere. */
public final class TransferLog {

  private final CourseFile file;
  private final List<Entry<ElsewhereWord.Told>> told;

  /**
   * A word with the entry that carries it.
   *
   * @param <W> what was written
   */
  public record Entry<W extends ElsewhereWord>(CourseEntry entry, W word) {}

  private TransferLog(CourseFile file) {
    this.file = file;
    this.told = words(file, ElsewhereWord.Told.class).toList();
  }

  public static TransferLog of(CourseFile file) {
    return new TransferLog(file);
  }

  private static <W extends ElsewhereWord> Stream<Entry<W>> words(CourseFile file, Class<W> kind) {
    return file.inForce(ElsewhereWritten.class).stream()
        .filter(written -> kind.isInstance(written.fact().word()))
        .map(written -> new Entry<>(written.entry(), kind.cast(written.fact().word())));
  }

  /** Every dose that was told, in the order of the entries. */
  public List<Entry<ElsewhereWord.Told>> told() {
    return told;
  }

  /** At what a prescriber has opened the schedule, since the last dose was told. */
  public Optional<Entry<ElsewhereWord.Opened>> opened() {
    return words(file, ElsewhereWord.Opened.class)
        .filter(one -> told.stream().allMatch(said -> said.entry().number() < one.entry().number()))
        .reduce((earlier, later) -> later);
  }

  /** Whether nobody knows when he injected last: not the last time that it was told, nor since. */
  private boolean isOpen() {
    return !told.isEmpty()
        && told.getLast().word().lastDay().isEmpty()
        && file.reports().stream()
            .noneMatch(report -> report.entry().number() > told.getLast().entry().number());
  }

  /**
   * A course's history with what was told.
   *
   * @param percent how much of a told dose a first one here may be
   */
  public History addTo(
      History own,
      IntSupplier percent,
      ClinicTime time,
      Function<PreparationId, Preparation> preparations) {
    if (told.isEmpty()) {
      return own;
    }
    int part = percent.getAsInt();
    var elsewhere =
        new Elsewhere(
            told.stream()
                .map(one -> new TakenOver(injection(one, time, preparations), part))
                .toList(),
            opened()
                .map(
                    one ->
                        new Opened(
                            preparations.apply(one.word().preparation()), one.word().upTo())));
    return own.withPast(List.of(), List.of(), own.before().with(elsewhere, isOpen()));
  }

  private static Injection injection(
      Entry<ElsewhereWord.Told> one,
      ClinicTime time,
      Function<PreparationId, Preparation> preparations) {
    ElsewhereWord.Told word = one.word();
    return new Injection(
        one.entry().number(),
        latest(one, time),
        preparations.apply(word.preparation()),
        word.drawn(),
        Optional.empty(),
        word.grade(),
        word.soft(),
        SimpleCauses.NOT_ASKED,
        Injection.Setting.HOME,
        Stock.NOT_RECORDED);
  }

  /** The latest instant at which his last injection there can have been. */
  private static Instant latest(Entry<ElsewhereWord.Told> one, ClinicTime time) {
    Instant told = one.entry().recordedAt();
    return one.word()
        .lastDay()
        .map(day -> time.startOf(day.plusDays(1)))
        .filter(end -> end.isBefore(told))
        .orElse(told);
  }
}
