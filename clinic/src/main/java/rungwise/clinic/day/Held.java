package rungwise.clinic.day;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.standing.CourseReader.ByDay;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.known.DurationLimits;

/** Until when what the day's list says of a course holds, if nothing is written meanwhile. */
public final class Held {

  /** What is counted by days is looked at so far ahead; a row is made anew then at the latest. */
  private static final int DAYS_AHEAD = 31;

  private final CourseState state;
  private final ClinicTime time;
  private final Function<LocalDate, ByDay> byDay;

  /**
   * What is said of a course at the instant of its state.
   *
   * @param byDay what is counted by days, as it would be on a day to come
   */
  public Held(CourseState state, ClinicTime time, Function<LocalDate, ByDay> byDay) {
    this.state = state;
    this.time = time;
    this.byDay = byDay;
  }

  /** The first instant at which anything of it may be different. */
  public Instant until() {
    Instant now = state.now();
    return Stream.of(state.turns().stream(), erections(), days())
        .flatMap(one -> one)
        .flatMap(at -> Stream.of(at, at.plusMillis(1))) // some ends are counted in, others are not
        .filter(at -> at.isAfter(now))
        .min(Instant::compareTo)
        .orElseThrow();
  }

  /** When an erection that is watched, or is open, is to be taken for an emergency. */
  public Optional<Instant> emergencyAt() {
    return Stream.concat(
            state.file().observing().stream()
                .map(Written::fact)
                .map(ObservationStarted::injectedAt),
            OpenErections.of(state).stream().flatMap(open -> open.injectedAt().stream()))
        .map(DurationLimits.EMERGENCY.value()::after)
        .min(Instant::compareTo);
  }

  private Stream<Instant> erections() {
    Stream<Instant> begun =
        Stream.of(
                state.file().observing().stream()
                    .map(Written::fact)
                    .map(ObservationStarted::injectedAt),
                OpenErections.of(state).stream().flatMap(open -> open.injectedAt().stream()))
            .flatMap(one -> one);
    return begun.flatMap(
        at ->
            Stream.of(
                at,
                DurationLimits.CLOSES_VOLUME.value().after(at),
                DurationLimits.EMERGENCY.value().after(at)));
  }

  /** The beginnings of the days on which something that is counted by days is different. */
  private Stream<Instant> days() {
    LocalDate today = time.dayOf(state.now());
    ByDay now = byDay.apply(today);
    Stream<LocalDate> counted =
        IntStream.rangeClosed(1, DAYS_AHEAD)
            .mapToObj(today::plusDays)
            .filter(day -> !byDay.apply(day).equals(now))
            .limit(1);
    return Stream.of(
            counted,
            Stream.of(today.plusDays(DAYS_AHEAD), Examination.of(state, time).due()),
            made().flatMap(day -> Stream.of(day, day.plusDays(1))))
        .flatMap(one -> one)
        .map(day -> day.atStartOfDay(time.zone()).toInstant());
  }

  /** When a vial, made on a day, is no more fresh. */
  private Stream<LocalDate> made() {
    int fresh = state.question().protocol().limits().freshDays().value();
    return state.file().vial().stream()
        .flatMap(vial -> vial.fact().vial().dates().made().stream())
        .map(day -> day.plusDays(fresh));
  }
}
