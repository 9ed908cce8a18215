package rungwise.web.titration;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.InjectionLine;
import rungwise.clinic.sheet.CourseView.StepLine;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DurationLimits;
import rungwise.drawing.InjectionClock;
import rungwise.drawing.InjectionClockDrawing;
import rungwise.drawing.Schedule;
import rungwise.drawing.ScheduleDrawing;
import rungwise.drawing.TimeLine;
import rungwise.drawing.TimeLineDrawing;
import rungwise.quantities.Volume;

/** The drawings of a course, each with the words that say the same. */
public record CourseDrawings(Drawn schedule, Optional<Drawn> timeLine, Optional<Drawn> clock) {

  private static final int MOST_PLACES = 10;

  /**
   * One drawing.
   *
   * @param svg one svg element
   * @param words what it says
   */
  public record Drawn(String svg, List<String> words) {
    public Drawn {
      words = List.copyOf(words);
    }
  }

  /**
   * The same small enough to stand side by side, for one look.
   *
   * @param emergencies every emergency there ever was, in words; may be empty
   * @param last the last injection, and how many are left out; empty if there is none
   */
  public record Brief(
      String schedule,
      Optional<String> timeLine,
      Optional<String> clock,
      String emergencies,
      String last) {}

  static Brief brief(CourseView view) {
    Optional<TimeLine> line = timeLine(view);
    return new Brief(
        ScheduleDrawing.small(schedule(view)),
        line.map(TimeLineDrawing::small),
        clock(view).map(InjectionClockDrawing::small),
        line.map(TimeLineDrawing::emergencies).orElse(""),
        line.map(TimeLineDrawing::last).orElse(""));
  }

  /** The drawings at their full size. */
  public static CourseDrawings of(CourseView view) {
    Schedule schedule = schedule(view);
    return new CourseDrawings(
        new Drawn(ScheduleDrawing.svg(schedule), List.of(ScheduleDrawing.words(schedule))),
        timeLine(view)
            .map(line -> new Drawn(TimeLineDrawing.svg(line), TimeLineDrawing.words(line))),
        clock(view)
            .map(
                clock ->
                    new Drawn(
                        InjectionClockDrawing.svg(clock),
                        List.of(InjectionClockDrawing.words(clock)))));
  }

  private static Schedule schedule(CourseView view) {
    Optional<Volume> now = view.signed().map(signed -> signed.dose().volume());
    List<Schedule.Step> steps = view.steps().stream().map(step -> step(view, step, now)).toList();
    return new Schedule(steps, Optional.of(view.ceiling()));
  }

  private static Schedule.Step step(CourseView view, StepLine line, Optional<Volume> now) {
    Dose dose = line.dose();
    var states = EnumSet.noneOf(Schedule.State.class);
    if (now.equals(Optional.of(dose.volume()))) {
      states.add(Schedule.State.NOW);
    }
    if (line.isProposed()) {
      states.add(Schedule.State.PROPOSED);
    }
    if (line.verdicts().stream().anyMatch(one -> one.rule() == GuardRule.VOLUME_CLOSED)) {
      states.add(Schedule.State.CLOSED);
    }
    if (ofThisPreparation(view).stream()
        .anyMatch(injection -> injection.report().drawn().equals(dose.volume()))) {
      states.add(Schedule.State.PAST);
    }
    return new Schedule.Step(
        dose.volume(), dose.barrel().markName(dose.volume()), dose.content(), states);
  }

  private static List<InjectionLine> ofThisPreparation(CourseView view) {
    return view.injections().stream().filter(InjectionLine::isOfThisPreparation).toList();
  }

  /** Volumes of another preparation cannot be compared on one line, so they are left out. */
  private static Optional<TimeLine> timeLine(CourseView view) {
    List<TimeLine.Point> points =
        new ArrayList<>(ofThisPreparation(view))
            .reversed().stream().map(CourseDrawings::point).toList();
    return points.isEmpty() ? Optional.empty() : Optional.of(new TimeLine(points));
  }

  private static TimeLine.Point point(InjectionLine line) {
    var notes = EnumSet.noneOf(TimeLine.Note.class);
    if (line.report().place() == Place.CLINIC) {
      notes.add(TimeLine.Note.IN_CLINIC);
    }
    SoftAfter soft = line.report().soft();
    if (soft.mayReach(DurationLimits.EMERGENCY.value())) {
      notes.add(TimeLine.Note.FOUR_HOURS);
    }
    return new TimeLine.Point(
        line.day(), line.report().drawn(), line.report().grade().number(), drawn(soft), notes);
  }

  private static TimeLine.SoftAfter drawn(SoftAfter soft) {
    return switch (soft) {
      case SoftAfter.Exactly exactly -> new TimeLine.SoftAfter.Exactly(exactly.duration());
      case SoftAfter.AtLeast least -> new TimeLine.SoftAfter.AtLeast(least.duration());
      case SoftAfter.Between between ->
          new TimeLine.SoftAfter.Between(between.from(), between.before());
      case SoftAfter.NotKnown notKnown -> new TimeLine.SoftAfter.NotKnown();
    };
  }

  private static Optional<InjectionClock> clock(CourseView view) {
    List<InjectionClock.Place> places =
        view.injections().stream()
            .flatMap(line -> line.report().details().spot().stream())
            .limit(MOST_PLACES)
            .map(CourseDrawings::place)
            .toList();
    return places.isEmpty()
        ? Optional.empty()
        : Optional.of(new InjectionClock(InjectionClock.View.FACING_HIM, places));
  }

  private static InjectionClock.Place place(Spot spot) {
    return new InjectionClock.Place(
        switch (spot.side()) {
          case HIS_LEFT -> InjectionClock.Side.HIS_LEFT;
          case HIS_RIGHT -> InjectionClock.Side.HIS_RIGHT;
        },
        spot.hour());
  }
}
