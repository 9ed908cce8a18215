package rungwise.clinic.room;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ObservationNoted;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.Moment;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.room.WatchView.Alarm;
import rungwise.clinic.room.WatchView.Check;
import rungwise.clinic.room.WatchView.Milestone;
import rungwise.clinic.room.WatchView.Seen;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.SameVisit;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Puts the room, and one man in it, into words. */
public final class RoomViews {

  private static final String INJECTED = "injected";

  private final ClinicTime time;

  public RoomViews(ClinicTime time) {
    this.time = time;
  }

  /** The board. Whoever is past 4 hours comes first, then whoever is to be looked at now. */
  public RoomView board(List<Observed> men, Instant now, Optional<LocalDate> lastClosed) {
    List<WatchView> lines =
        men.stream()
            .sorted(
                Comparator.comparing(Observed::isEmergency)
                    .thenComparing(Observed::isCheckDue)
                    .reversed()
                    .thenComparing(Observed::injectedAt))
            .map(man -> of(man, now))
            .toList();
    LocalDate today = LocalDate.ofInstant(now, time.zone());
    return new RoomView(
        answer(lines),
        time.timeText(now),
        lines,
        lastClosed.map(ClinicTime::words),
        lastClosed.filter(today::equals).isPresent());
  }

  private static String answer(List<WatchView> men) {
    if (men.isEmpty()) {
      return "Nobody is under observation.";
    }
    long due = men.stream().filter(man -> man.check().isDue()).count();
    String count = men.size() == 1 ? "1 man is" : men.size() + " men are";
    return count + " under observation" + (due == 0 ? "." : "; to be looked at now: " + due + ".");
  }

  /** One man. */
  public WatchView of(Observed man, Instant now) {
    ObservationStarted started = man.started();
    return new WatchView(
        man.course(),
        man.observation(),
        man.fullName(),
        man.recordNumber(),
        dose(man),
        man.preparation().composition(),
        time.clock(man.injectedAt(), now),
        man.isTimeKnown()
            ? TimeSpan.ofMinutes(Duration.ofMillis(man.since().milliseconds()).toMinutes())
                .toString()
            : "Not known how long",
        new Check(
            time.clock(man.nextCheck(), now),
            man.isTimeKnown()
                ? ClinicTime.distance(now, man.nextCheck())
                : "by a clock that is right",
            man.isCheckDue()),
        man.last().map(note -> lastSeen(note, now)).orElse("nothing seen since the injection"),
        alarm(man),
        time.clock(man.emergencyAt(), now),
        started.spot().map(Spot::words).orElse(""),
        milestones(man, now),
        man.isSound(),
        seen(man, now));
  }

  /** Volume and mark; a volume between two lines has no mark, and says so. */
  private static String dose(Observed man) {
    Barrel barrel = Barrels.of(man.started().barrel()).orElseThrow();
    boolean hasNoMark =
        barrel.marking().graduationVolume().isPresent() && !barrel.hasMarkAt(man.drawn());
    return hasNoMark
        ? man.drawn() + " (between two lines of a " + barrel.words() + ")"
        : new Dose(man.drawn(), man.preparation(), barrel).volumeAndMark();
  }

  private static Alarm alarm(Observed man) {
    if (man.isEmergency()) {
      return Alarm.EMERGENCY;
    }
    return man.isLong() ? Alarm.LONG : Alarm.NONE;
  }

  private String lastSeen(ObservationNoted note, Instant now) {
    return note.moment().words()
        + note.grade().map(grade -> ", " + grade.words()).orElse("")
        + ", "
        + time.clock(note.at(), now);
  }

  private List<Milestone> milestones(Observed man, Instant now) {
    var lines = new ArrayList<Milestone>();
    lines.add(
        new Milestone(INJECTED, Optional.of(time.clock(man.injectedAt(), now)), Optional.empty()));
    for (Moment moment : List.of(Moment.FIRST_FIRM, Moment.USABLE, Moment.FULLY_SOFT)) {
      Optional<Instant> at =
          man.notes().stream()
              .filter(note -> note.moment() == moment)
              .map(ObservationNoted::at)
              .findFirst();
      lines.add(
          new Milestone(
              moment.words(),
              at.map(instant -> time.clock(instant, now)),
              at.map(instant -> after(man, instant))));
    }
    return lines;
  }

  private List<Seen> seen(Observed man, Instant now) {
    var lines = new ArrayList<Seen>();
    String before = man.started().before().map(Vitals::words).orElse("");
    lines.add(new Seen(time.clock(man.injectedAt(), now), "", INJECTED, "", before));
    for (ObservationNoted note : man.notes()) {
      lines.add(
          new Seen(
              time.clock(note.at(), now),
              after(man, note.at()),
              note.moment().words(),
              note.grade().map(grade -> grade.number() + ", " + grade.words()).orElse(""),
              note.vitals().map(Vitals::words).orElse("")));
    }
    return lines;
  }

  private static String after(Observed man, Instant at) {
    return TimeSpan.between(man.injectedAt(), at).toString();
  }

  /** What the rule for a second dose in the same visit lets follow now, if it does. */
  public Optional<String> secondDose(CourseState state) {
    boolean isSecond =
        state.mayInject().verdicts().stream()
            .anyMatch(verdict -> verdict.rule() == GuardRule.SAME_VISIT);
    Optional<Volume> signed = state.file().signedDose().map(written -> written.fact().volume());
    return SameVisit.next(state.question())
        .filter(next -> isSecond && signed.isPresent())
        .map(next -> secondDose(state, next.first(), signed.orElseThrow()));
  }

  private String secondDose(CourseState state, Injection first, Volume second) {
    Volume together = first.drawn().plus(second);
    return "The protocol lets this second dose follow in this visit. The first was "
        + first.drawn()
        + " at "
        + time.clock(first.at(), state.now())
        + ", this one is "
        + second
        + ": together "
        + together
        + ", which holds "
        + state.question().preparation().contentOf(together)
        + ". Both act together, and the response will count for both.";
  }
}
