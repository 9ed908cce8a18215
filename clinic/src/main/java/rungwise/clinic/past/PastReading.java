package rungwise.clinic.past;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.PastReviewed;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.past.PastHistories.Kept;
import rungwise.clinic.past.PastHistories.Undone;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.Struck;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Volume;

/**
 * What guards and advice make of a history from before this record began. Injections with a time
 * and a preparation are read like reports of which nobody asked what went wrong. Without them
 * nothing is known of the last injection, until a report is written after the history was; and what
 * was long closes doses only once a prescriber has written what was injected.
 */
public final class PastReading {

  private final CourseFile file;
  private final Function<PreparationId, Preparation> preparations;

  private PastReading(CourseFile file, Function<PreparationId, Preparation> preparations) {
    this.file = file;
    this.preparations = preparations;
  }

  /** A course's own history with what was brought in up to an instant. */
  public static History added(
      History own,
      CourseFile file,
      PastHistories past,
      Function<PreparationId, Preparation> preparations,
      Instant now) {
    String key = file.patient().recordKey();
    List<Undone> undone =
        past.undone(key).stream().filter(one -> !one.kept().at().isAfter(now)).toList();
    List<Kept> known =
        Stream.concat(
                past.of(key).stream().filter(kept -> !kept.at().isAfter(now)),
                undone.stream().filter(one -> one.at().isAfter(now)).map(Undone::kept))
            .toList();
    List<Undone> taken =
        undone.stream()
            .filter(one -> !one.at().isAfter(now))
            .filter(one -> !isConfirmed(file, one))
            .toList();
    return known.isEmpty() && taken.isEmpty()
        ? own
        : new PastReading(file, preparations).added(own, known, taken);
  }

  /** What was taken back, and that no prescriber has confirmed to be wrong. */
  public static List<Undone> unconfirmed(CourseFile file, PastHistories past) {
    return past.undone(file.patient().recordKey()).stream()
        .filter(one -> !isConfirmed(file, one))
        .toList();
  }

  private static boolean isConfirmed(CourseFile file, Undone undone) {
    return file.inForce(CorrectionConfirmed.class).stream()
        .anyMatch(written -> written.fact().correction().equals(undone.entry()));
  }

  /** Whether a prescriber has, or had, to write what long erections from before followed. */
  public static boolean hasLongUndated(CourseFile file, PastHistories past) {
    return Stream.concat(
            past.of(file.patient().recordKey()).stream(),
            unconfirmed(file, past).stream().map(Undone::kept))
        .anyMatch(PastReading::hasLongUndated);
  }

  /** Whether it tells of a long erection without saying when it was. */
  public static boolean hasLongUndated(Kept kept) {
    return undated(kept).anyMatch(PastReading::isLong);
  }

  private History added(History own, List<Kept> known, List<Undone> taken) {
    List<Injection> dated = known.stream().flatMap(this::dated).toList();
    return own.withPast(
        dated,
        taken.stream().flatMap(one -> struck(one, dated)).toList(),
        new Before(
            known.stream().flatMap(this::mapped).toList(),
            Stream.concat(known.stream(), taken.stream().map(Undone::kept))
                .flatMap(this::unmapped)
                .toList(),
            known.stream().anyMatch(this::isOpen)));
  }

  /** What it said goes on counting; where it was brought in again, that stands there instead. */
  private Stream<Struck> struck(Undone undone, List<Injection> now) {
    return Stream.concat(dated(undone.kept()), mapped(undone.kept()))
        .map(
            said ->
                new Struck(
                    said,
                    undone.number(),
                    now.stream().filter(one -> one.at().equals(said.at())).findFirst()));
  }

  private boolean isOpen(Kept kept) {
    return !kept.history().isDated()
        && file.reports().stream().noneMatch(report -> report.entry().number() > kept.number());
  }

  private Stream<Injection> dated(Kept kept) {
    return kept.history().injections().stream()
        .flatMap(
            one ->
                one
                    .setting()
                    .map(
                        setting ->
                            injection(
                                kept,
                                one,
                                one.volume(),
                                setting.at(),
                                preparations.apply(setting.preparation())))
                    .stream());
  }

  private static Stream<PastInjection> undated(Kept kept) {
    return kept.history().injections().stream().filter(one -> one.setting().isEmpty());
  }

  private static boolean isLong(PastInjection one) {
    return one.soft().mayReach(DurationLimits.CLOSES_VOLUME.value());
  }

  /** What a prescriber wrote of a history after it was brought in, the last time. */
  private Optional<PastReviewed> reviewOf(Kept kept) {
    return file.inForce(PastReviewed.class).stream()
        .filter(written -> written.entry().number() > kept.number())
        .map(CourseFile.Written::fact)
        .reduce((earlier, later) -> later);
  }

  private Stream<Before.Unmapped> unmapped(Kept kept) {
    return reviewOf(kept).isPresent()
        ? Stream.empty()
        : undated(kept)
            .filter(PastReading::isLong)
            .map(one -> new Before.Unmapped(one.volume(), one.grade(), one.soft()));
  }

  /** Each stands at the instant at which the history was brought in: it was not later. */
  private Stream<Injection> mapped(Kept kept) {
    return reviewOf(kept).flatMap(PastReviewed::reference).map(preparations).stream()
        .flatMap(
            reference ->
                undated(kept)
                    .map(one -> injection(kept, one, inReference(one), kept.at(), reference)));
  }

  /** As much of the reference preparation as holds the same, rounded down to a microlitre. */
  private static Volume inReference(PastInjection one) {
    double part = one.strength().orElseThrow() * Math.min(one.potency(), 1);
    return Volume.ofMicrolitres(Math.max(1, (long) Math.floor(one.volume().microlitres() * part)));
  }

  private static Injection injection(
      Kept kept, PastInjection one, Volume volume, Instant at, Preparation preparation) {
    return new Injection(
        kept.number(),
        at,
        preparation,
        volume,
        Optional.empty(),
        one.grade(),
        one.soft(),
        SimpleCauses.NOT_ASKED,
        Injection.Setting.HOME,
        Stock.NOT_RECORDED);
  }
}
