package rungwise.clinic.past;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.CorrectionConfirmed;
import rungwise.clinic.course.CourseFact.PastReviewed;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
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
 * and a preparation are read like reports of which nobody asked what went wrong. Without a time
 * nothing is known of the last injection, until a report is written after the history was, also
 * where the history was taken back and no prescriber has confirmed that it was wrong; without a
 * preparation what was long stops every dose until a prescriber has written what was injected, and
 * where nobody can tell it closes every dose that no prescriber has opened since.
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

  /** Whether it tells of a long erection without saying what was injected. */
  public static boolean hasLongUndated(Kept kept) {
    return notNamed(kept).anyMatch(PastReading::isLong);
  }

  private History added(History own, List<Kept> known, List<Undone> taken) {
    List<Injection> dated = known.stream().flatMap(this::dated).toList();
    return own.withPast(
        dated,
        taken.stream().flatMap(one -> struck(one, dated)).toList(),
        new Before(
            known.stream().flatMap(this::undated).toList(),
            Stream.concat(known.stream(), taken.stream().map(Undone::kept))
                .flatMap(this::unmapped)
                .toList(),
            Stream.concat(known.stream(), taken.stream().map(Undone::kept))
                .flatMap(this::nobodyKnows)
                .toList(),
            Stream.concat(known.stream(), taken.stream().map(Undone::kept))
                .anyMatch(kept -> isOpen(file, kept))));
  }

  /** What it said goes on counting; where it was brought in again, that stands there instead. */
  private Stream<Struck> struck(Undone undone, List<Injection> now) {
    return Stream.concat(dated(undone.kept()), undated(undone.kept()))
        .map(
            said ->
                new Struck(
                    said,
                    undone.number(),
                    now.stream().filter(one -> one.at().equals(said.at())).findFirst()));
  }

  /** Whether it tells of injections without a time, and nobody has asked since for the last one. */
  public static boolean isOpen(CourseFile file, Kept kept) {
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

  private static Stream<PastInjection> notNamed(Kept kept) {
    return kept.history().injections().stream().filter(one -> one.preparation().isEmpty());
  }

  private static boolean isLong(PastInjection one) {
    return one.soft().mayReach(DurationLimits.CLOSES_VOLUME.value());
  }

  /** What a prescriber wrote of a history after it was brought in, the last time. */
  private Optional<Written<PastReviewed>> reviewOf(Kept kept) {
    return file.inForce(PastReviewed.class).stream()
        .filter(written -> written.entry().number() > kept.number())
        .reduce((earlier, later) -> later);
  }

  private Stream<Before.Unmapped> unmapped(Kept kept) {
    return reviewOf(kept).isPresent()
        ? Stream.empty()
        : notNamed(kept)
            .filter(PastReading::isLong)
            .map(one -> new Before.Unmapped(one.volume(), one.grade(), one.soft()));
  }

  /** Each stands at the instant at which the history was brought in: it was not later. */
  private Stream<Injection> undated(Kept kept) {
    return Stream.concat(named(kept), mapped(kept));
  }

  private Stream<Injection> named(Kept kept) {
    return kept.history().injections().stream()
        .flatMap(
            one ->
                one
                    .named()
                    .map(
                        id -> injection(kept, one, one.volume(), kept.at(), preparations.apply(id)))
                    .stream());
  }

  private Stream<Injection> mapped(Kept kept) {
    return reviewOf(kept).flatMap(written -> written.fact().reference()).map(preparations).stream()
        .flatMap(
            reference ->
                notNamed(kept)
                    .map(one -> injection(kept, one, inReference(one), kept.at(), reference)));
  }

  /** Long ones of which a prescriber has written that nobody can tell what was injected. */
  private Stream<Before.NobodyKnows> nobodyKnows(Kept kept) {
    return reviewOf(kept).filter(written -> written.fact().reference().isEmpty()).stream()
        .flatMap(
            written ->
                notNamed(kept)
                    .filter(PastReading::isLong)
                    .map(
                        one ->
                            new Before.NobodyKnows(
                                written.entry().number(), kept.at(), one.grade(), one.soft())));
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
