package rungwise.app.server;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.NoteDraft;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.screening.BaselineDraft;
import rungwise.clinic.screening.ScreeningDraft;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.supply.VialDraft;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.titration.DrawnMark;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.SignDraft;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Volume;

/** Tells what happened to one invented man, through the same use cases that people use. */
final class DemoTeller {

  private static final Duration SIGNED_BEFORE = Duration.ofMinutes(30);
  private static final Duration VIAL_LASTS = Duration.ofDays(180);
  private static final int HOURS_IN_A_DAY = 24;
  private static final int SPREAD = 7;
  private static final int USABLE = 3;

  /** A man with what his course is run with. */
  record Man(
      String name,
      String born,
      String number,
      String group,
      Barrel barrel,
      Preparation preparation,
      Sample protocol) {}

  /** A sample that the clinic signed. */
  record Sample(String name, int version) {
    String key() {
      return name + " version " + version;
    }
  }

  /**
   * An injection at home, as he told it.
   *
   * @param soft a token of the report form
   * @param side his side, or empty
   */
  record Told(int daysAgo, String grade, String soft, String minutes, String causes, String side) {}

  /** An injection in the clinic: when he was firm, usable and soft, in minutes after it. */
  record Seen(int daysAgo, String grade, int firm, int usable, int soft, String side) {}

  private final CourseCases cases;
  private final StoryClock clock;
  private final ClinicTime time;
  private final Account prescriber;
  private final Account educator;

  DemoTeller(
      CourseCases cases, StoryClock clock, ClinicTime time, Account prescriber, Account educator) {
    this.cases = cases;
    this.clock = clock;
    this.time = time;
    this.prescriber = prescriber;
    this.educator = educator;
  }

  CourseId open(Man man, int daysAgo) {
    clock.goBack(Duration.ofDays(daysAgo));
    return cases
        .starting()
        .open(
            prescriber,
            new CourseDraft(
                man.name(),
                man.born(),
                man.number(),
                man.group(),
                man.preparation().id().value(),
                man.barrel().token(),
                man.protocol().key(),
                false))
        .orThrow();
  }

  /** He is asked everything, answers no but for some, and gets his vial. */
  void prepare(CourseId id, Man man, Map<Condition, String> but) {
    Map<String, String> answers =
        new HashMap<>(
            Arrays.stream(Condition.values())
                .collect(Collectors.toMap(Condition::name, condition -> "no")));
    but.forEach((condition, answer) -> answers.put(condition.name(), answer));
    cases.screenings().answer(educator, id, new ScreeningDraft(answers, false)).orThrow();
    cases
        .screenings()
        .baseline(educator, id, new BaselineDraft("9", "good", "good", "himself"))
        .orThrow();
    vial(id, man.preparation(), "L-" + man.number());
  }

  /** He is examined, and nothing is found. */
  void examined(CourseId id, int daysAgo) {
    goTo(id, daysAgo);
    cases
        .screenings()
        .examine(educator, id, date(clock.instant()), Answer.NO.words(), "")
        .orThrow();
  }

  /** A vial that was made today. */
  void vial(CourseId id, Preparation preparation, String lot) {
    Map<Component, String> strengths =
        preparation.ingredients().stream()
            .collect(
                Collectors.toMap(
                    Ingredient::component, one -> one.strength().numberIn(one.component().unit())));
    cases
        .vials()
        .receive(
            educator,
            id,
            new VialDraft(
                lot,
                strengths,
                date(clock.instant()),
                date(clock.instant().plus(VIAL_LASTS)),
                "",
                "",
                "",
                "U-100 syringe"))
        .orThrow();
  }

  private String date(Instant instant) {
    return time.dateText(instant);
  }

  private String clockTime(Instant instant) {
    return time.timeText(instant);
  }

  /** Goes back to an hour of a day that is not the same for every story. */
  private void goTo(CourseId id, int daysAgo) {
    int hour = Math.floorMod(id.text().hashCode() + daysAgo, SPREAD);
    clock.goBack(Duration.ofHours((long) daysAgo * HOURS_IN_A_DAY + hour));
  }

  private void later(Duration span) {
    clock.goBack(clock.back().minus(span));
  }

  /** The proposed dose is signed for the clinic, injected, watched and written down. */
  void inTheClinic(CourseId id, Seen seen) {
    goTo(id, seen.daysAgo());
    EntryId observation = inject(id, seen.side());
    Instant at = clock.instant();
    note(id, observation, "FIRST_FIRM", seen.firm());
    note(id, observation, "USABLE", seen.usable());
    later(Duration.ofMinutes(seen.soft()));
    cases
        .room()
        .end(educator, id, observation, end(at, seen.grade(), seen.soft(), /* left= */ false))
        .orThrow();
  }

  /** He left before he was soft. */
  void leavesTheClinic(CourseId id, int daysAgo, int lastSeen) {
    goTo(id, daysAgo);
    EntryId observation = inject(id, "HIS_RIGHT");
    Instant at = clock.instant();
    later(Duration.ofMinutes(lastSeen));
    cases.room().end(educator, id, observation, end(at, "3", lastSeen, /* left= */ true)).orThrow();
  }

  /** He is under observation still. */
  void underObservation(CourseId id, int minutesAgo) {
    clock.goBack(Duration.ofMinutes(minutesAgo));
    EntryId observation = inject(id, "HIS_LEFT");
    Instant at = clock.instant();
    clock.comeHome();
    note(id, observation, at, "FIRST_FIRM", SPREAD);
  }

  private EntryId inject(CourseId id, String side) {
    sign(id, Place.CLINIC, /* nextStep= */ false);
    CourseState state = cases.titration().find(id).orElseThrow();
    Volume volume = state.file().signedDose().orElseThrow().fact().volume();
    Instant at = clock.instant();
    cases
        .room()
        .start(
            educator,
            id,
            new StartDraft(
                date(at),
                clockTime(at),
                time.occurrence(at),
                DrawnMark.text(volume, state.question().ladder().barrel()),
                side,
                hourOf(side),
                "128",
                "78",
                "70",
                false))
        .orThrow();
    return cases.titration().find(id).orElseThrow().file().entries().getLast().id();
  }

  private static String hourOf(String side) {
    return side.isEmpty() ? "" : side.equals("HIS_LEFT") ? "2" : "10";
  }

  private void note(CourseId id, EntryId observation, String moment, int minutes) {
    Instant at = clock.instant();
    Duration back = clock.back();
    later(Duration.ofMinutes(minutes));
    note(id, observation, at, moment, minutes);
    clock.goBack(back);
  }

  private void note(
      CourseId id, EntryId observation, Instant injected, String moment, int minutes) {
    Instant seen = injected.plus(Duration.ofMinutes(minutes));
    cases
        .room()
        .note(
            educator,
            id,
            observation,
            new NoteDraft(
                date(seen), clockTime(seen), time.occurrence(seen), moment, "", "124", "76", "72"))
        .orThrow();
  }

  private EndDraft end(Instant injected, String grade, int minutes, boolean left) {
    Instant seen = injected.plus(Duration.ofMinutes(minutes));
    return new EndDraft(
        date(seen),
        clockTime(seen),
        time.occurrence(seen),
        left,
        grade,
        "none_found",
        Set.of(),
        "1",
        "126",
        "78",
        "70",
        "");
  }

  /** The proposed dose is signed, injected half an hour later, and reported the next morning. */
  void atHome(CourseId id, Told told) {
    goTo(id, told.daysAgo());
    later(SIGNED_BEFORE.negated());
    sign(id, Place.HOME, /* nextStep= */ false);
    report(id, told, Place.HOME);
  }

  /** An injection in the clinic, watched until he was soft; firm or usable was nothing to note. */
  void watched(CourseId id, Told told) {
    goTo(id, told.daysAgo());
    EntryId observation = inject(id, told.side());
    Instant at = clock.instant();
    int minutes = Integer.parseInt(told.minutes());
    later(Duration.ofMinutes(minutes));
    cases
        .room()
        .end(educator, id, observation, end(at, told.grade(), minutes, /* left= */ false))
        .orThrow();
  }

  /** An injection in the clinic that is told by telephone, without an observation. */
  void toldOfTheClinic(CourseId id, Told told) {
    goTo(id, told.daysAgo());
    later(SIGNED_BEFORE.negated());
    sign(id, Place.CLINIC, /* nextStep= */ false);
    report(id, told, Place.CLINIC);
  }

  private void report(CourseId id, Told told, Place place) {
    Instant injected = clock.instant().plus(SIGNED_BEFORE);
    later(Duration.ofHours(9));
    CourseState state = cases.titration().find(id).orElseThrow();
    Volume volume = state.file().signedDose().orElseThrow().fact().volume();
    boolean isBetween = told.soft().equals("between");
    boolean isExact = told.soft().equals("exactly");
    ReportDraft draft =
        ReportDraft.EMPTY
            .with(ReportPart.IDENTIFIED, "yes")
            .with(ReportPart.DATE, date(injected))
            .with(ReportPart.TIME, clockTime(injected))
            .with(ReportPart.OCCURRENCE, time.occurrence(injected).name())
            .with(ReportPart.MARK, DrawnMark.text(volume, state.question().ladder().barrel()))
            .with(ReportPart.GRADE, told.grade())
            .with(ReportPart.SOFT, told.soft())
            .with(ReportPart.EXACT_MINUTES, isExact ? told.minutes() : "")
            .with(ReportPart.FROM_MINUTES, isBetween ? "30" : "")
            .with(ReportPart.BEFORE_MINUTES, isBetween ? told.minutes() : "")
            .with(ReportPart.CAUSES, told.causes())
            .with(ReportPart.VIAL, state.file().vial().orElseThrow().entry().id().text())
            .with(ReportPart.PLACE, place.name().toLowerCase(Locale.ROOT));
    cases.titration().report(educator, id, withDetails(draft, told)).orThrow();
  }

  private static ReportDraft withDetails(ReportDraft draft, Told told) {
    boolean isUsable = Integer.parseInt(told.grade()) >= USABLE;
    return told.side().isEmpty()
        ? draft
        : draft
            .with(ReportPart.ONSET, "8")
            .with(ReportPart.USABLE, isUsable ? "32" : "")
            .with(ReportPart.SIDE, told.side())
            .with(ReportPart.HOUR, hourOf(told.side()))
            .with(ReportPart.PAIN, "1")
            .with(ReportPart.BRUISE, "no")
            .with(ReportPart.AROUSED, "yes")
            .with(ReportPart.SECOND_DOSE, "no");
  }

  /** Signs the proposed dose; its holds are overridden. */
  void sign(CourseId id, Place place, boolean nextStep) {
    CourseState state = cases.titration().find(id).orElseThrow();
    Volume volume = state.advice().decision().proposed().orElseThrow();
    var holds =
        state.advice().verdictsOn(volume).stream()
            .map(Verdict::rule)
            .filter(rule -> rule.guardClass() == GuardClass.HOLD)
            .collect(Collectors.toSet());
    cases
        .titration()
        .sign(
            prescriber,
            id,
            new SignDraft(
                volume.microlitres(),
                place,
                state.file().basis(),
                "",
                holds,
                holds.isEmpty() ? "" : "drawn up by the nurse",
                nextStep))
        .orThrow();
  }

  /** Everything that home use needs. */
  void ready(CourseId id, Preparation preparation) {
    for (Readiness item : Readiness.neededFor(preparation)) {
      boolean isPlan = item == Readiness.EMERGENCY_PLAN;
      cases
          .teaching()
          .record(
              educator,
              id,
              new ReadinessDraft(
                  item.name(),
                  date(clock.instant()),
                  isPlan ? "Quellmoor Hospital (invented)" : "",
                  isPlan ? "555 0142" : "",
                  isPlan ? "his partner drives" : "",
                  ""))
          .orThrow();
    }
  }

  /** Another preparation, with the protocol that is written for it. */
  void change(CourseId id, Preparation preparation, Sample protocol, String why) {
    CourseState state = cases.titration().find(id).orElseThrow();
    var plan =
        new Plan(
            preparation.id(), state.file().plan().barrel(), protocol.name(), protocol.version());
    cases.titration().choosePlan(prescriber, id, plan, one -> true, why).orThrow();
  }
}
