package rungwise.clinic.day;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.day.OpenErection.Way;
import rungwise.clinic.day.OpenErection.Where;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.TimeSpan;

/** The erections of a course that were, or may be, an emergency, by whether their end is known. */
public final class OpenErections {

  private OpenErections() {}

  /** Those of which nobody has said how they ended, the one that began first on top. */
  public static List<OpenErection> of(CourseState state) {
    return Stream.of(
            reported(state), ofNobodyKnowsWhat(state), unfinished(state), tooLongInTheRoom(state))
        .flatMap(one -> one)
        .sorted(Comparator.comparing(open -> open.injectedAt().orElse(Instant.MIN)))
        .toList();
  }

  /** The one that began first, by which it is told what to do now. */
  public static Optional<OpenErection> first(CourseState state) {
    return of(state).stream().findFirst();
  }

  /** When he injected, of those that are known to be over and wait for a prescriber. */
  public static List<Instant> over(CourseState state) {
    return Stream.concat(
            state.question().history().openEmergencies().stream()
                .filter(one -> isOver(state.file(), one))
                .map(Injection::at),
            openOfNobodyKnowsWhat(state)
                .filter(one -> one.soft().hasKnownEnd())
                .map(Before.NobodyKnows::at))
        .sorted()
        .toList();
  }

  private static Stream<Before.NobodyKnows> openOfNobodyKnowsWhat(CourseState state) {
    History history = state.question().history();
    return history.before().openEmergencies(history.reviews()).stream();
  }

  private static Stream<OpenErection> ofNobodyKnowsWhat(CourseState state) {
    return openOfNobodyKnowsWhat(state)
        .filter(one -> !one.soft().hasKnownEnd())
        .map(
            one ->
                new OpenErection(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Where.NOT_SAID,
                    /* isWithdrawn= */ false,
                    one.soft().saysEmergency(),
                    Optional.empty(),
                    new Way.Review()));
  }

  private static Stream<OpenErection> reported(CourseState state) {
    History history = state.question().history();
    return history.openEmergencies().stream()
        .filter(one -> !isOver(state.file(), one))
        .map(one -> reported(state.file(), history, one));
  }

  private static OpenErection reported(CourseFile file, History history, Injection injection) {
    boolean isDated = !history.isUndated(injection);
    Optional<Written<InjectionReported>> counting = counting(file, injection);
    boolean counts = counting.filter(one -> one.entry().number() == injection.entry()).isPresent();
    return new OpenErection(
        Optional.of(injection.at()).filter(at -> isDated),
        firmAt(injection).filter(at -> isDated),
        Optional.of(injection.preparation()),
        Optional.of(injection.drawn()),
        where(file, injection),
        !counts && file.entries().stream().anyMatch(one -> one.number() == injection.entry()),
        isSaid(file, injection),
        root(file, injection).flatMap(file::handedOver),
        counting.<Way>map(one -> new Way.Correct(one.entry().id())).orElseGet(Way.Review::new));
  }

  /**
   * Whether 4 hours were said of it in so many words, now or in what was corrected since: that the
   * end is still not known takes nothing back.
   */
  private static boolean isSaid(CourseFile file, Injection injection) {
    return injection.soft().saysEmergency()
        || root(file, injection).stream()
            .flatMap(
                root -> file.entries().stream().filter(entry -> file.rootOf(entry).equals(root)))
            .anyMatch(
                entry ->
                    entry.fact() instanceof InjectionReported report
                        && report.soft().saysEmergency());
  }

  private static Where where(CourseFile file, Injection injection) {
    if (hasLeft(file, injection)) {
      return Where.LEFT_THE_CLINIC;
    }
    return injection.isAtHome() ? Where.AT_HOME : Where.NOT_SAID;
  }

  /** Whether it was first written down at the end of an observation. */
  private static boolean hasLeft(CourseFile file, Injection injection) {
    return root(file, injection)
        .map(root -> file.entry(root).fact())
        .filter(
            fact -> fact instanceof InjectionReported report && report.observation().isPresent())
        .isPresent();
  }

  private static Optional<Instant> firmAt(Injection injection) {
    return injection.soft() instanceof SoftAfter.AtLeast(TimeSpan seen)
        ? Optional.of(seen.after(injection.at()))
        : Optional.empty();
  }

  /** Whether the report, or what was written in its place, says how it ended. */
  private static boolean isOver(CourseFile file, Injection injection) {
    return injection.soft().hasKnownEnd()
        || counting(file, injection).filter(one -> one.fact().soft().hasKnownEnd()).isPresent();
  }

  /** The report of the same injection that counts now; empty if it was withdrawn. */
  private static Optional<Written<InjectionReported>> counting(
      CourseFile file, Injection injection) {
    return root(file, injection)
        .flatMap(
            root ->
                file.reports().stream()
                    .filter(one -> file.rootOf(one.entry()).equals(root))
                    .findFirst());
  }

  private static Optional<EntryId> root(CourseFile file, Injection injection) {
    return file.entries().stream()
        .filter(entry -> entry.number() == injection.entry())
        .map(file::rootOf)
        .findFirst();
  }

  /** What somebody said in a report that is not complete. */
  private static Stream<OpenErection> unfinished(CourseState state) {
    return state.question().circumstances().unfinished().stream()
        .map(
            one ->
                new OpenErection(
                    one.injectedAt(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Where.NOT_SAID,
                    /* isWithdrawn= */ false,
                    /* isSaid= */ false,
                    Optional.empty(),
                    new Way.Report()));
  }

  private static Stream<OpenErection> tooLongInTheRoom(CourseState state) {
    return state.file().observing().stream()
        .filter(
            one ->
                !DurationLimits.EMERGENCY
                    .value()
                    .after(one.fact().injectedAt())
                    .isAfter(state.now()))
        .map(one -> inTheRoom(state, one));
  }

  /** Whether the vial that it was drawn from says so, where it is known. */
  private static boolean isOnLabel(
      CourseFile file, ObservationStarted started, Preparation preparation) {
    return VialLabels.labelOf(file, started.vial())
        .filter(label -> !label.equals(preparation.composition()))
        .isEmpty();
  }

  private static OpenErection inTheRoom(CourseState state, Written<ObservationStarted> written) {
    ObservationStarted started = written.fact();
    CourseEntry entry = written.entry();
    Optional<Instant> seen =
        state.file().notesOf(entry.id()).stream()
            .map(one -> one.fact().at())
            .reduce((earlier, later) -> later);
    return new OpenErection(
        Optional.of(started.injectedAt()),
        seen,
        Optional.of(state.question().preparation())
            .filter(one -> one.id().equals(started.preparation()))
            .filter(one -> isOnLabel(state.file(), started, one)),
        Optional.of(started.drawn()),
        Where.UNDER_OBSERVATION,
        /* isWithdrawn= */ false,
        /* isSaid= */ false,
        Optional.empty(),
        new Way.EndObservation(entry.id()));
  }
}
