package rungwise.clinic.past;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.past.PastHistories.Kept;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * What guards and advice make of a history from before this record began. Injections with a time
 * and a preparation are read like reports of which nobody asked what went wrong. Without them
 * nothing is known of the last injection, until a report is written after the history was.
 */
public final class PastReading {

  private PastReading() {}

  /** A course's own history with what was brought in up to an instant. */
  public static History added(
      History own,
      CourseFile file,
      PastHistories past,
      Function<PreparationId, Preparation> preparations,
      Instant now) {
    List<Kept> known =
        past.of(file.patient().recordKey()).stream()
            .filter(kept -> !kept.at().isAfter(now))
            .toList();
    if (known.isEmpty()) {
      return own;
    }
    List<Injection> dated = known.stream().flatMap(kept -> injections(kept, preparations)).toList();
    return own.withPast(dated, known.stream().anyMatch(kept -> isOpen(kept, file)));
  }

  private static boolean isOpen(Kept kept, CourseFile file) {
    return !kept.history().isDated()
        && file.reports().stream().noneMatch(report -> report.entry().number() > kept.number());
  }

  private static Stream<Injection> injections(
      Kept kept, Function<PreparationId, Preparation> preparations) {
    return kept.history().injections().stream()
        .flatMap(
            one ->
                one.setting().map(setting -> injection(kept, one, setting, preparations)).stream());
  }

  private static Injection injection(
      Kept kept,
      PastInjection one,
      PastInjection.Setting setting,
      Function<PreparationId, Preparation> preparations) {
    return new Injection(
        kept.number(),
        setting.at(),
        preparations.apply(setting.preparation()),
        one.volume(),
        Optional.empty(),
        one.grade(),
        one.soft(),
        SimpleCauses.NOT_ASKED,
        Place.HOME,
        Stock.NOT_RECORDED);
  }
}
