package rungwise.clinic.running;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Volume;

/**
 * One course in which anything may happen in any order, driven through the use cases. What they
 * refuse is part of it. The same seed makes the same course.
 */
public final class RandomCourse {

  private static final int STEPS = 24;
  private static final List<String> SYRINGES = List.of("u100-1", "u100-0.5", "u100-0.3-half");
  private static final List<Preparation> PREPARATIONS =
      List.of(SamplePreparations.ALPROSTADIL_20, SamplePreparations.THREE_DRUG);
  private static final DateTimeFormatter DATE = DateTimeFormatter.ISO_LOCAL_DATE;
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final ZoneId ZONE = ZoneId.of("America/New_York");

  private final TitrationWorld world;
  private final Random random;
  private final CourseId course;

  private RandomCourse(TitrationWorld world, Random random) {
    this.world = world;
    this.random = random;
    this.course = world.open(pick(List.of(AetiologyGroup.values())).token(), pick(SYRINGES));
  }

  /** Runs a course to its end. */
  public static CourseId run(TitrationWorld world, long seed) {
    var run = new RandomCourse(world, new Random(seed));
    for (int step = 0; step < STEPS; step++) {
      run.step();
    }
    return run.course;
  }

  private <T> T pick(List<T> choices) {
    return choices.get(random.nextInt(choices.size()));
  }

  private void step() {
    world.pass(Duration.ofMinutes(random.nextInt(4000)).plusNanos(random.nextInt(1_000_000_000)));
    switch (random.nextInt(13)) {
      case 0, 1, 2, 3, 4, 5 -> sign();
      case 6, 7, 8 -> world.report(course, report());
      case 9 -> correctOrWithdraw();
      case 10, 11 -> review();
      default -> change();
    }
  }

  private void change() {
    switch (random.nextInt(7)) {
      case 0 -> world.chooseBarrel(course, pick(SYRINGES));
      case 1 ->
          world
              .teaching()
              .record(Staff.EDUCATOR, course, world.readiness(pick(List.of(Readiness.values()))));
      case 2 -> world.receive(course, vial());
      case 3 -> world.choosePreparation(course, pick(PREPARATIONS));
      case 4 -> inTheClinic();
      case 5 ->
          world
              .screenings()
              .decide(
                  Staff.PRESCRIBER, course, pick(List.of(Condition.values())).name(), "considered");
      default -> {
        Answer answer = random.nextInt(12) == 0 ? pick(List.of(Answer.values())) : Answer.NO;
        world
            .screenings()
            .answer(
                Staff.EDUCATOR,
                course,
                ScreeningForm.one(pick(List.of(Condition.values())), answer));
      }
    }
  }

  /** A vial of what is ordered, made on any day of the last months. */
  private VialForm vial() {
    var preparation = world.state(course).question().preparation();
    Instant made = world.now().minus(Duration.ofDays(random.nextInt(90)));
    return VialForm.of(preparation).made(DATE.format(made.atZone(ZONE))).beyondUse("2028-12-31");
  }

  /** He is injected, and it is seen how it ended. */
  private void inTheClinic() {
    CourseFile file = world.file(course);
    if (!file.observing().isEmpty()) {
      Instant at = world.now();
      var draft =
          new EndDraft(
              DATE.format(at.atZone(ZONE)),
              TIME.format(at.atZone(ZONE)),
              ClinicTime.Occurrence.FIRST,
              random.nextInt(5) == 0,
              Integer.toString(random.nextInt(5)),
              "none_found",
              Set.of(),
              "",
              "",
              "",
              "",
              "");
      world.room().end(Staff.EDUCATOR, course, file.observing().getFirst().entry().id(), draft);
      return;
    }
    Instant at = world.now();
    List<Volume> rungs = world.state(course).question().ladder().rungs();
    var draft =
        new StartDraft(
            DATE.format(at.atZone(ZONE)),
            TIME.format(at.atZone(ZONE)),
            ClinicTime.Occurrence.FIRST,
            Long.toString(rungs.getFirst().microlitres() / 10),
            "HIS_LEFT",
            "2",
            "128",
            "76",
            "72",
            random.nextBoolean());
    world.room().start(Staff.EDUCATOR, course, draft);
    world.pass(Duration.ofMinutes(random.nextInt(random.nextInt(8) == 0 ? 300 : 70)));
  }

  private void review() {
    int what = random.nextInt(4);
    if (what == 0) {
      world.lifting().reviewEmergency(Staff.PRESCRIBER, course, "examined");
    } else if (what == 1) {
      world
          .lifting()
          .reviewEmergency(
              Staff.PRESCRIBER, course, Optional.of(world.now()), "the end cannot be known");
    } else if (what == 2) {
      for (CourseEntry entry : world.file(course).entries().reversed()) {
        if (entry.corrects().isPresent()) {
          world.lifting().confirmCorrection(Staff.PRESCRIBER, course, entry.id(), "a slip");
        }
      }
    } else {
      List<Volume> rungs = world.state(course).question().ladder().rungs();
      world.lifting().reopen(Staff.PRESCRIBER, course, pick(rungs).microlitres(), "explained");
    }
  }

  private void correctOrWithdraw() {
    CourseFile file = world.file(course);
    if (file.reports().isEmpty()) {
      return;
    }
    Written<InjectionReported> earlier = pick(file.reports());
    if (random.nextBoolean()) {
      world.report(course, report().correcting(earlier.entry().id(), "asked again"));
    } else {
      world.titration().withdraw(Staff.EDUCATOR, course, earlier.entry().id(), "another man's");
    }
  }

  private ReportForm report() {
    Instant at = world.now().minus(Duration.ofMinutes(random.nextInt(3000)));
    List<Volume> rungs = world.state(course).question().ladder().rungs();
    Volume rung = pick(rungs.subList(0, Math.min(rungs.size(), 3)));
    ReportForm form =
        ReportForm.at(DATE.format(at.atZone(ZONE)), TIME.format(at.atZone(ZONE)))
            .mark(Long.toString(rung.microlitres() / 10))
            .grade(Integer.toString(random.nextInt(5)))
            .causes(pick(List.of("not_asked", "one_found", "none_found", "none_found")));
    String minutes = Integer.toString(1 + random.nextInt(random.nextInt(8) == 0 ? 300 : 100));
    return switch (random.nextInt(10)) {
      case 0 -> form.soft("not_known");
      case 1 -> form.atLeast(minutes);
      case 2 -> form.between("0", minutes);
      case 3 -> form.soft("up_to_60").with(ReportPart.EXACT_MINUTES, "250");
      default -> form.exactly(minutes);
    };
  }

  /** Mostly the proposed dose, else any step; every hold on it is overridden. */
  private void sign() {
    Advice advice = world.state(course).advice();
    Optional<Volume> proposed = advice.decision().proposed();
    Volume any = pick(advice.steps()).volume();
    Volume volume = random.nextInt(4) == 0 ? any : proposed.orElse(any);
    boolean isProposed = proposed.equals(Optional.of(volume));
    Set<GuardRule> holds = new HashSet<>();
    advice.verdictsOn(volume).stream()
        .map(Verdict::rule)
        .filter(rule -> rule.guardClass() == GuardClass.HOLD)
        .forEach(holds::add);
    world.sign(
        course,
        new SignDraft(
            volume.microlitres(),
            random.nextInt(4) == 0 ? Place.HOME : Place.CLINIC,
            world.file(course).basis(),
            isProposed ? "" : pick(List.of(ChangeReason.values())).name(),
            holds,
            "considered",
            random.nextInt(3) == 0));
  }
}
