package rungwise.app.server;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.formulary.InUseRule;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.clinic.screening.ScreeningDraft;
import rungwise.clinic.start.CourseDraft;
import rungwise.clinic.supply.VialDraft;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.titration.CourseState;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.SignDraft;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.known.UnitScale;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Volume;

/**
 * The invented clinic's past, told through the same use cases that people use. Every man, date and
 * response is invented.
 */
final class DemoStory {

  private static final Duration SIGNED_BEFORE = Duration.ofMinutes(30);
  private static final String PROTOCOL = "us-vial-syringe-label version 1";
  private static final String PROTOCOL_NAME = "us-vial-syringe-label";
  private static final List<Barrel> KEPT =
      List.of(Barrels.U100_0_3_HALF_UNIT, Barrels.U100_0_5, Barrels.U100_1, Barrels.MILLILITRE_1);
  private static final List<Preparation> PREPARATIONS =
      List.of(
          SamplePreparations.ALPROSTADIL_20,
          SamplePreparations.ALPROSTADIL_40,
          SamplePreparations.THREE_DRUG);

  private final OpenClinic clinic;
  private final CourseCases cases;
  private final StoryClock clock;
  private final ClinicTime time;
  private final Account prescriber;
  private final Account educator;

  DemoStory(OpenClinic clinic, StoryClock clock, ClinicTime time) {
    this.clinic = clinic;
    this.cases = clinic.courseCases(time);
    this.clock = clock;
    this.time = time;
    this.prescriber = named(clinic.people(), "tobias");
    this.educator = named(clinic.people(), "maren");
  }

  private static Account named(People people, String signInName) {
    return people.list().stream()
        .filter(account -> account.signInName().text().equals(signInName))
        .findFirst()
        .orElseThrow();
  }

  /** One injection of the story: how many days ago, how firm, how it ended, in minutes. */
  private record Told(int daysAgo, String grade, String soft, String minutes, String causes) {}

  private record Man(
      String name, String born, String number, String group, Barrel barrel, String preparation) {}

  void tell() {
    clock.goBack(Duration.ofDays(60));
    clinic.protocols().signSample(prescriber, PROTOCOL_NAME, 1).orThrow();
    for (Preparation preparation : PREPARATIONS) {
      clinic
          .formulary()
          .addSample(prescriber.id(), preparation.id(), new InUseRule.NotStated())
          .orThrow();
    }
    for (Barrel barrel : KEPT) {
      clinic.formulary().addSyringe(prescriber.id(), barrel.token()).orThrow();
    }
    steppingUp();
    settled();
    tooLong();
    stillFirm();
    causesNotAsked();
    atTheFirstDose();
    notScreened();
    clock.comeHome();
  }

  private void steppingUp() {
    CourseId id =
        open(
            new Man(
                "Anselm Birk",
                "1961-04-30",
                "HL-1041",
                "vasculogenic",
                Barrels.U100_1,
                "alprostadil-20"),
            "no",
            30);
    run(id, new Told(21, "1", "exactly", "20", "none_found"));
    run(id, new Told(14, "2", "exactly", "25", "none_found"));
  }

  private void settled() {
    CourseId id =
        open(
            new Man(
                "Corvin Adeyemi",
                "1957-11-02",
                "HL-1017",
                "mixed",
                Barrels.U100_1,
                "alprostadil-20"),
            "no",
            55);
    run(id, new Told(49, "1", "exactly", "15", "none_found"));
    run(id, new Told(45, "3", "exactly", "45", "none_found"));
    for (Readiness item : Readiness.values()) {
      cases.teaching().record(educator, id, ready(item)).orThrow();
    }
    run(id, new Told(20, "3", "exactly", "50", "none_found"));
    run(id, new Told(12, "4", "exactly", "55", "none_found"));
    run(id, new Told(5, "3", "between", "60", "none_found"));
    clock.goBack(Duration.ofDays(4));
    sign(id, Place.HOME);
  }

  private void tooLong() {
    CourseId id =
        open(
            new Man(
                "Dorian Velte",
                "1979-08-19",
                "HL-1066",
                "psychogenic",
                Barrels.U100_1,
                "alprostadil-20"),
            "no",
            25);
    run(id, new Told(18, "2", "exactly", "30", "none_found"));
    run(id, new Told(3, "4", "exactly", "150", "none_found"));
  }

  private void stillFirm() {
    CourseId id =
        open(
            new Man(
                "Emeric Sand",
                "1983-02-07",
                "HL-1072",
                "spinal_cord",
                Barrels.U100_0_3_HALF_UNIT,
                "alprostadil-20"),
            "no",
            16);
    run(id, new Told(1, "3", "at_least", "90", "none_found"));
  }

  private void causesNotAsked() {
    CourseId id =
        open(
            new Man(
                "Florian Okello",
                "1954-06-21",
                "HL-1078",
                "vasculogenic",
                Barrels.U100_1,
                "alprostadil-20"),
            "no",
            12);
    run(id, new Told(2, "0", "not_known", "", "not_asked"));
  }

  private void atTheFirstDose() {
    open(
        new Man(
            "Gideon Marsh",
            "1966-12-12",
            "HL-1083",
            "post_prostatectomy",
            Barrels.U100_0_3_HALF_UNIT,
            "alprostadil-20"),
        "no",
        2);
  }

  private void notScreened() {
    open(
        new Man(
            "Hannes Tamm",
            "1971-03-15",
            "HL-1085",
            "unknown",
            Barrels.U100_0_3_HALF_UNIT,
            "alprostadil-20"),
        "not known",
        1);
  }

  private ReadinessDraft ready(Readiness item) {
    boolean isPlan = item == Readiness.EMERGENCY_PLAN;
    return new ReadinessDraft(
        item.name(),
        time.dateText(clock.instant()),
        isPlan ? "Lakeside Hospital" : "",
        isPlan ? "555 0142" : "",
        isPlan ? "his partner drives" : "",
        "");
  }

  private CourseId open(Man man, String answer, int daysAgo) {
    clock.goBack(Duration.ofDays(daysAgo));
    CourseId id = openOnly(man);
    if (answer.equals("no")) {
      Map<String, String> answers =
          Arrays.stream(Condition.values())
              .collect(Collectors.toMap(Condition::name, condition -> answer));
      cases.screenings().answer(educator, id, new ScreeningDraft(answers, false)).orThrow();
      cases.vials().receive(educator, id, vial(man)).orThrow();
    }
    return id;
  }

  private VialDraft vial(Man man) {
    boolean isStrong = man.preparation().equals("alprostadil-40");
    return new VialDraft(
        "L-" + man.number(),
        Map.of(Component.ALPROSTADIL, isStrong ? "40" : "20"),
        time.dateText(clock.instant()),
        time.dateText(clock.instant().plus(Duration.ofDays(180))),
        "",
        "",
        man.barrel().words());
  }

  private CourseId openOnly(Man man) {
    return cases
        .starting()
        .open(
            prescriber,
            new CourseDraft(
                man.name(),
                man.born(),
                man.number(),
                man.group(),
                man.preparation(),
                man.barrel().token(),
                PROTOCOL,
                false))
        .orThrow();
  }

  /** The proposed dose is signed, injected half an hour later, and reported the next morning. */
  private void run(CourseId id, Told told) {
    clock.goBack(Duration.ofDays(told.daysAgo()).plus(SIGNED_BEFORE));
    sign(id, Place.CLINIC);
    Instant injected = clock.instant().plus(SIGNED_BEFORE);
    clock.goBack(Duration.ofDays(told.daysAgo()).minus(Duration.ofHours(9)));
    CourseState state = cases.titration().find(id).orElseThrow();
    Volume volume = state.file().signedDose().orElseThrow().fact().volume();
    cases.titration().report(educator, id, draft(told, injected, volume)).orThrow();
  }

  private ReportDraft draft(Told told, Instant injected, Volume volume) {
    boolean isBetween = told.soft().equals("between");
    return new ReportDraft(
        time.dateText(injected),
        time.timeText(injected),
        Occurrence.FIRST,
        "",
        UnitScale.U_100.markAt(volume).number(),
        told.grade(),
        told.soft(),
        isBetween ? "" : told.minutes(),
        isBetween ? "30" : "",
        isBetween ? told.minutes() : "",
        told.causes(),
        "",
        ReportDraft.Details.NONE,
        Optional.empty(),
        "");
  }

  private void sign(CourseId id, Place place) {
    CourseState state = cases.titration().find(id).orElseThrow();
    Volume volume = state.advice().decision().proposed().orElseThrow();
    cases
        .titration()
        .sign(
            prescriber,
            id,
            new SignDraft(
                volume.microlitres(), place, state.file().basis(), "", Set.of(), "", false))
        .orThrow();
  }
}
