package rungwise.app.server;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rungwise.app.server.DemoTeller.Man;
import rungwise.app.server.DemoTeller.Sample;
import rungwise.app.server.DemoTeller.Seen;
import rungwise.app.server.DemoTeller.Told;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;
import rungwise.clinic.reach.Wishes;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.files.ShippedPopulations;

/** The invented clinic's past. Every man, date and response is invented. */
final class DemoStory {

  private static final Sample LABEL = new Sample("us-vial-syringe-label", 1);
  private static final Sample MIXTURE = new Sample("cautious-mixture", 2);
  private static final int DAYS_OPEN = 28;
  private static final String LEFT = "HIS_LEFT";
  private static final String RIGHT = "HIS_RIGHT";
  private static final String NONE_FOUND = "none_found";
  private static final List<Barrel> KEPT =
      List.of(Barrels.U100_0_3_HALF_UNIT, Barrels.U100_0_5, Barrels.U100_1, Barrels.MILLILITRE_1);
  private static final List<Preparation> PREPARATIONS =
      List.of(
          SamplePreparations.ALPROSTADIL_20,
          SamplePreparations.ALPROSTADIL_40,
          SamplePreparations.THREE_DRUG);

  private final OpenClinic clinic;
  private final StoryClock clock;
  private final Account prescriber;
  private final DemoTeller teller;
  private final DemoCalls calls;

  DemoStory(OpenClinic clinic, StoryClock clock, ClinicTime time) {
    this.clinic = clinic;
    this.clock = clock;
    this.prescriber = named(clinic.people(), "tobias");
    Account educator = named(clinic.people(), "maren");
    CourseCases cases = clinic.courseCases(time);
    this.teller = new DemoTeller(cases, clock, time, prescriber, educator);
    this.calls = new DemoCalls(cases, educator);
  }

  private static Account named(People people, String signInName) {
    return people.list().stream()
        .filter(account -> account.signInName().text().equals(signInName))
        .findFirst()
        .orElseThrow();
  }

  void tell() {
    clock.goBack(Duration.ofDays(130));
    clinic.protocols().signSample(prescriber, LABEL.name(), LABEL.version()).orThrow();
    clinic.protocols().signSample(prescriber, MIXTURE.name(), MIXTURE.version()).orThrow();
    for (Preparation preparation : PREPARATIONS) {
      clinic
          .formulary()
          .addSample(prescriber.id(), preparation.id(), inUseOf(preparation))
          .orThrow();
    }
    clinic
        .populations()
        .signShipped(
            prescriber,
            ShippedPopulations.DEFAULT,
            Set.of(SamplePreparations.ALPROSTADIL_20.id(), SamplePreparations.ALPROSTADIL_40.id()))
        .orThrow();
    for (Barrel barrel : KEPT) {
      clinic.formulary().addSyringe(prescriber.id(), barrel.token()).orThrow();
    }
    settled();
    mixtureOnANewVial();
    atTheMaximum();
    anotherStrength();
    steppingUp();
    tooLong();
    leftTooEarly();
    causesNotAsked();
    decisionMissing();
    atTheFirstDose();
    notScreened();
    underObservation();
    clock.comeHome();
  }

  /** As the invented pharmacy says; a powder has its own hours. */
  private static InUseRule inUseOf(Preparation preparation) {
    return preparation.form() instanceof Form.Solution
        ? new InUseRule.DaysAfterOpening(DAYS_OPEN)
        : new InUseRule.SingleUse();
  }

  private static Man man(String name, String born, String number, String group, Barrel barrel) {
    return new Man(name, born, number, group, barrel, SamplePreparations.ALPROSTADIL_20, LABEL);
  }

  private static Man onMixture(String name, String born, String number) {
    return new Man(
        name,
        born,
        number,
        "vasculogenic",
        Barrels.U100_0_5,
        SamplePreparations.THREE_DRUG,
        MIXTURE);
  }

  private CourseId prepared(Man man, int daysAgo) {
    CourseId id = teller.open(man, daysAgo);
    teller.prepare(id, man, Map.of());
    return id;
  }

  private void settled() {
    Man man = man("Corvin Adeyemi", "1957-11-02", "HL-1017", "mixed", Barrels.U100_1);
    CourseId id = teller.open(man, 110);
    teller.prepare(id, man, Map.of(Condition.ANTICOAGULANT, "yes"));
    calls.number(id, "555 0117", "", "");
    calls.wishes(id, "", Wishes.Interpreter.NOT_NEEDED);
    teller.inTheClinic(id, new Seen(104, "1", 12, 14, 18, RIGHT));
    teller.inTheClinic(id, new Seen(97, "3", 9, 14, 48, LEFT));
    teller.ready(id, man.preparation());
    teller.atHome(id, new Told(90, "3", "exactly", "50", NONE_FOUND, RIGHT));
    teller.atHome(id, new Told(76, "4", "exactly", "55", NONE_FOUND, LEFT));
    teller.atHome(id, new Told(60, "3", "exactly", "40", NONE_FOUND, RIGHT));
    teller.atHome(id, new Told(41, "4", "exactly", "45", NONE_FOUND, LEFT));
    teller.atHome(id, new Told(20, "2", "exactly", "30", "one_found", RIGHT));
    teller.examined(id, 19);
    teller.atHome(id, new Told(12, "4", "exactly", "55", NONE_FOUND, RIGHT));
    teller.atHome(id, new Told(5, "3", "between", "60", NONE_FOUND, LEFT));
    clock.goBack(Duration.ofDays(4));
    teller.sign(id, Place.HOME, /* nextStep= */ true);
  }

  private void mixtureOnANewVial() {
    Man man = onMixture("Matthis Okoro", "1949-09-14", "HL-1009");
    CourseId id = prepared(man, 96);
    teller.inTheClinic(id, new Seen(95, "1", 10, 15, 20, LEFT));
    teller.inTheClinic(id, new Seen(88, "2", 9, 15, 25, RIGHT));
    teller.ready(id, man.preparation());
    clock.goBack(Duration.ofDays(60));
    teller.vial(id, man.preparation(), "L-2114");
    teller.atHome(id, new Told(40, "2", "exactly", "30", NONE_FOUND, LEFT));
    teller.atHome(id, new Told(26, "3", "exactly", "45", NONE_FOUND, RIGHT));
    clock.goBack(Duration.ofDays(1));
    teller.vial(id, man.preparation(), "L-2207");
  }

  private void atTheMaximum() {
    Man man = man("Kolbein Aster", "1952-01-23", "HL-1023", "vasculogenic", Barrels.U100_1);
    CourseId id = prepared(man, 60);
    for (int daysAgo = 52; daysAgo >= 20; daysAgo -= 8) {
      teller.watched(id, new Told(daysAgo, "1", "exactly", "20", NONE_FOUND, ""));
    }
  }

  private void anotherStrength() {
    Man man = man("Leander Voss", "1959-07-30", "HL-1030", "vasculogenic", Barrels.U100_1);
    CourseId id = prepared(man, 58);
    for (int daysAgo = 50; daysAgo >= 22; daysAgo -= 7) {
      teller.watched(id, new Told(daysAgo, "2", "exactly", "25", NONE_FOUND, ""));
    }
    clock.goBack(Duration.ofDays(3));
    teller.change(
        id,
        SamplePreparations.ALPROSTADIL_40,
        LABEL,
        "not usable at the last step of the weaker strength");
    teller.vial(id, SamplePreparations.ALPROSTADIL_40, "L-4012");
  }

  private void steppingUp() {
    Man man = man("Anselm Birk", "1961-04-30", "HL-1041", "vasculogenic", Barrels.U100_1);
    CourseId id = prepared(man, 30);
    teller.inTheClinic(id, new Seen(21, "1", 10, 15, 20, LEFT));
    teller.inTheClinic(id, new Seen(14, "2", 9, 15, 25, RIGHT));
  }

  private void tooLong() {
    Man man = man("Dorian Velte", "1979-08-19", "HL-1066", "psychogenic", Barrels.U100_1);
    CourseId id = prepared(man, 25);
    calls.number(id, "555 0166", "18:00", "");
    teller.inTheClinic(id, new Seen(18, "2", 8, 15, 30, LEFT));
    teller.watched(id, new Told(3, "4", "exactly", "150", NONE_FOUND, RIGHT));
  }

  private void leftTooEarly() {
    Man man =
        man("Emeric Sand", "1983-02-07", "HL-1072", "spinal_cord", Barrels.U100_0_3_HALF_UNIT);
    CourseId id = prepared(man, 16);
    calls.number(id, "555 0172", "09:00", "17:00");
    calls.number(id, "555 0100 ext. 72", "", "");
    calls.wishes(id, "Norwegian", Wishes.Interpreter.NEEDED);
    teller.leavesTheClinic(id, 1, 90);
  }

  private void causesNotAsked() {
    Man man = man("Florian Okello", "1954-06-21", "HL-1078", "vasculogenic", Barrels.U100_1);
    CourseId id = prepared(man, 12);
    calls.number(id, "555 0178", "", "");
    teller.toldOfTheClinic(id, new Told(2, "0", "not_known", "", "not_asked", ""));
  }

  private void decisionMissing() {
    Man man = onMixture("Ivo Lindqvist", "1955-05-17", "HL-1080");
    CourseId id = teller.open(man, 6);
    teller.prepare(
        id, man, Map.of(Condition.PAST_INFARCTION, "yes", Condition.ALPHA_BLOCKER, "yes"));
  }

  private void atTheFirstDose() {
    prepared(
        man(
            "Gideon Marsh",
            "1966-12-12",
            "HL-1083",
            "post_prostatectomy",
            Barrels.U100_0_3_HALF_UNIT),
        2);
  }

  private void notScreened() {
    CourseId id =
        teller.open(
            man("Hannes Tamm", "1971-03-15", "HL-1085", "unknown", Barrels.U100_0_3_HALF_UNIT), 1);
    calls.number(id, "555 0185", "12:00", "20:00");
    calls.notReached(id);
  }

  private void underObservation() {
    Man man = man("Jarek Oduya", "1963-10-08", "HL-1087", "vasculogenic", Barrels.U100_1);
    CourseId id = prepared(man, 3);
    teller.underObservation(id, 40);
  }
}
