package rungwise.clinic.fitting;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.RelativeStrength;
import rungwise.dosing.response.ResponseModel;
import rungwise.dosing.response.Trial;

/**
 * Reads the courses of a choice from the record: each course once, with what was brought in for it,
 * and each history that belongs to no course.
 *
 * <p>A man counts from his first injection on, and up to the first of a preparation whose strength
 * is not known exactly. What comes after it cannot be read, and what came before says all that the
 * doses until then depended on.
 */
final class CourseChooser {

  private final FitPorts ports;
  private final FitChoice choice;
  private final Preparation reference;
  private final Courses.Builder builder = Courses.builder();
  private final List<ChosenCourses.Man> men = new ArrayList<>();
  private final Map<LeftOut, Integer> leftOut = new EnumMap<>(LeftOut.class);

  private CourseChooser(FitPorts ports, FitChoice choice, Preparation reference) {
    this.ports = ports;
    this.choice = choice;
    this.reference = reference;
  }

  static ChosenCourses choose(FitPorts ports, FitChoice choice, Preparation reference) {
    return new CourseChooser(ports, choice, reference).run();
  }

  private ChosenCourses run() {
    Set<String> ofCourses = new HashSet<>();
    for (CourseState state : ports.courses().get()) {
      String key = state.file().patient().recordKey();
      ofCourses.add(key);
      take(state, ports.past().of(key));
    }
    for (PastHistories.Kept kept : ports.past().all()) {
      if (!ofCourses.contains(kept.history().recordKey())) {
        take(kept.history());
      }
    }
    return new ChosenCourses(choice, reference, builder.build(), men, leftOut);
  }

  private void leaveOut(LeftOut why) {
    leftOut.merge(why, 1, Integer::sum);
  }

  /** Trials in the order of time, while their strength is known. */
  private static final class Reports {
    private final List<Trial> trials = new ArrayList<>();
    private boolean isCut = false;

    void add(Optional<Trial> trial) {
      isCut |= trial.isEmpty();
      if (!isCut) {
        trials.add(trial.orElseThrow());
      }
    }
  }

  private void take(CourseState state, List<PastHistories.Kept> past) {
    History history = state.question().history();
    if (ResponseModel.notRead(history.injections()).isPresent()) {
      leaveOut(LeftOut.NOT_READ);
      return;
    }
    List<PastInjection> notNamed = past.stream().flatMap(CourseChooser::notNamed).toList();
    var reports = new Reports();
    notNamed.forEach(one -> reports.add(one.strength().map(strength -> trial(one, strength))));
    history.injections().stream()
        .filter(Injection::wentIn)
        .forEach(
            injection ->
                reports.add(
                    strengthOf(injection.preparation())
                        .map(strength -> ResponseModel.trial(history, injection, strength))));
    Optional<LocalDate> began =
        notNamed.isEmpty()
            ? history.injections().stream().map(Injection::at).findFirst().map(this::day)
            : Optional.empty();
    var man =
        new ChosenCourses.Man(
            state.file().patient().recordNumber(), Optional.of(state.file().id()));
    var told = new Told(man, state.file().opened().group(), began, !notNamed.isEmpty());
    take(told, reports);
  }

  private static Stream<PastInjection> notNamed(PastHistories.Kept kept) {
    return kept.history().injections().stream().filter(one -> one.setting().isEmpty());
  }

  private void take(PastHistory history) {
    Optional<AetiologyGroup> group = AetiologyGroup.of(history.group());
    if (group.isEmpty()) {
      leaveOut(LeftOut.OTHER_GROUP);
      return;
    }
    var reports = new Reports();
    for (PastInjection one : history.injections()) {
      reports.add(
          one.setting().isEmpty()
              ? one.strength().map(strength -> trial(one, strength))
              : one.setting()
                  .map(PastInjection.Setting::preparation)
                  .flatMap(ports.preparations())
                  .flatMap(this::strengthOf)
                  .map(strength -> trial(one, strength)));
    }
    var told =
        new Told(
            new ChosenCourses.Man(history.recordKey(), Optional.empty()),
            group.get(),
            history.injections().getFirst().setting().map(setting -> day(setting.at())),
            history.injections().stream().anyMatch(one -> one.setting().isEmpty()));
    take(told, reports);
  }

  /**
   * What is asked of a man before he counts.
   *
   * @param hasNotNamed whether a history names no preparation
   */
  private record Told(
      ChosenCourses.Man man,
      AetiologyGroup group,
      Optional<LocalDate> began,
      boolean hasNotNamed) {}

  private void take(Told told, Reports reports) {
    if (!choice.groups().contains(told.group())) {
      leaveOut(LeftOut.OTHER_GROUP);
    } else if (reports.trials.isEmpty()) {
      leaveOut(reports.isCut ? LeftOut.OTHER_PREPARATION : LeftOut.NO_INJECTION);
    } else if (told.hasNotNamed() && !choice.countsFiles()) {
      leaveOut(LeftOut.NOT_NAMED);
    } else if (!choice.holds(told.began())) {
      leaveOut(LeftOut.OTHER_DAYS);
    } else {
      if (reports.isCut) {
        leaveOut(LeftOut.ONLY_BEFORE_CHANGE);
      }
      men.add(told.man());
      builder.course(told.group().token());
      reports.trials.forEach(one -> builder.trial(one.logDose(), one.grade(), one.lasted()));
    }
  }

  private static Trial trial(PastInjection one, double strength) {
    return new Trial(
        new Given(one.volume(), one.potency(), strength).logDose(),
        one.grade(),
        Lasted.of(one.grade(), one.soft()));
  }

  private Optional<Double> strengthOf(Preparation preparation) {
    return RelativeStrength.of(preparation, reference)
            instanceof RelativeStrength.Exactly(double strength)
        ? Optional.of(strength)
        : Optional.empty();
  }

  private LocalDate day(Instant at) {
    return ports.time().dayOf(at);
  }
}
