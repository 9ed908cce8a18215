package rungwise.checks.adversary;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Needed;
import rungwise.checks.adversary.law.Told;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.people.Account;
import rungwise.clinic.supply.BefellDraft;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What is written around the doses: vials, answers, examinations, teaching, the past. */
final class Clerk {

  private static final String[] SHOWN = {"TEST", "EXAMINATION", "WRONG_MAN"};
  private static final Condition[] ASKED = {
    Condition.MYELOMA_OR_LEUKAEMIA,
    Condition.CURVATURE_OR_SCARRING,
    Condition.LONG_ERECTION_BEFORE,
    Condition.MAO_INHIBITOR,
    Condition.CORONARY_DISEASE,
    Condition.ANTICOAGULANT
  };

  /** What befalls a vial, first of all that it stands where it should. */
  private static final String[] FATES = {
    "REFRIGERATOR", "WARM", "ROOM", "TRAVEL", "FROZEN", "NOT_KNOWN", "EMPTY", "THROWN_AWAY"
  };

  private static final String[] ANSWERS = {"yes", "no", "no", "not known"};

  private final Actor actor;
  private final House house;
  private final Ledger ledger;

  Clerk(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  String screenAll() {
    Reading<Long> read =
        house.screenings.answer(House.EDUCATOR, house.course(), Desk.answers("no"));
    if (read.found().isPresent()) {
      for (Condition condition : Condition.values()) {
        ledger.answers.put(condition, new Ledger.Answered("no", actor.now));
      }
    }
    return "educator: he has none of the conditions" + Actor.outcome(read);
  }

  String answer(SplittableRandom random) {
    Condition condition = ASKED[random.nextInt(ASKED.length)];
    String answer = ANSWERS[random.nextInt(ANSWERS.length)];
    Account who = random.nextInt(4) == 0 ? House.PRESCRIBER : House.EDUCATOR;
    Reading<Long> read =
        house.screenings.answer(who, house.course(), Desk.answer(condition, answer));
    if (read.found().isPresent()) {
      if (answer.equals("yes")) {
        ledger.standing.putIfAbsent(condition, read.orThrow());
      }
      long minute =
          Optional.ofNullable(ledger.answers.get(condition))
              .filter(old -> old.answer().equals(answer))
              .map(Ledger.Answered::minute)
              .orElse(actor.now);
      ledger.answers.put(condition, new Ledger.Answered(answer, minute));
    }
    return who.fullName() + " answers " + condition + ": " + answer + Actor.outcome(read);
  }

  String stillTrue() {
    Reading<Long> read = house.screenings.answer(House.EDUCATOR, house.course(), Desk.stillTrue());
    if (read.found().isPresent()) {
      ledger.answers.replaceAll((one, old) -> new Ledger.Answered(old.answer(), actor.now));
    }
    return "educator: all is still true" + Actor.outcome(read);
  }

  String decide(SplittableRandom random) {
    Condition condition = ASKED[2 + random.nextInt(3)];
    Reading<Long> read =
        house.screenings.decide(House.PRESCRIBER, house.course(), condition.name(), "weighed");
    read.found().ifPresent(entry -> ledger.decided.put(condition, entry));
    return "prescriber decides to go on with " + condition + Actor.outcome(read);
  }

  /** A prescriber writes that a yes was wrong; a finding of an examination is not lifted so. */
  String overturn(SplittableRandom random) {
    Condition condition = ASKED[random.nextInt(ASKED.length)];
    String shown = SHOWN[random.nextInt(SHOWN.length)];
    Reading<Long> read =
        house.screenings.overturn(
            House.PRESCRIBER, house.course(), condition.name(), shown, "asked again");
    if (read.found().isPresent()) {
      ledger.standing.remove(condition);
      boolean isOthers = shown.equals("WRONG_MAN");
      ledger.answers.compute(
          condition,
          (asked, old) ->
              !isOthers
                  ? new Ledger.Answered("no", actor.now)
                  : old == null || old.answer().equals("yes")
                      ? new Ledger.Answered("not known", actor.now)
                      : old);
    }
    return "prescriber writes that the yes to "
        + condition
        + " was wrong, shown by "
        + shown
        + Actor.outcome(read);
  }

  String examine(SplittableRandom random) {
    String found = random.nextInt(4) == 0 ? "yes" : "no";
    Reading<Long> read =
        house.screenings.examine(
            House.EDUCATOR, house.course(), Minutes.date(actor.now), found, "");
    if (read.found().isPresent()) {
      ledger.examined = actor.now;
      if (found.equals("yes")) {
        ledger.found = read.orThrow();
        ledger.foundNoMore = 0;
      } else if (ledger.found > 0 && ledger.foundNoMore == 0) {
        ledger.foundNoMore = read.orThrow();
      }
    }
    return "educator examines, scarring: " + found + Actor.outcome(read);
  }

  /** The clinic takes what he gets out of use. */
  String recall() {
    house.recall(ledger.plan().mix());
    ledger.recalled.add(ledger.plan().mix());
    return "the clinic takes " + ledger.plan().mix() + " out of use";
  }

  /** An item of readiness by its number, else one at random. */
  String ready(long dice) {
    List<String> items = Needed.READY;
    int which =
        dice >= 0 && dice < items.size()
            ? (int) dice
            : new SplittableRandom(dice).nextInt(items.size());
    String item = items.get(which);
    Reading<Long> read =
        house.teaching.record(House.EDUCATOR, house.course(), Desk.ready(item, actor.now));
    if (read.found().isPresent()) {
      ledger.ready.put(item, actor.now);
      ledger.watch.readySince.putIfAbsent(item, actor.now);
    }
    return "educator: " + item + Actor.outcome(read);
  }

  String vial(SplittableRandom random) {
    Mix planned = ledger.plan().mix();
    Mix mix = random.nextInt(6) == 0 ? Mix.any(random) : planned;
    Dated dated = Dated.of(random, actor.now);
    Reading<Long> read = house.vials.receive(House.EDUCATOR, house.course(), dated.draft(mix));
    if (read.found().isPresent()) {
      String id = house.memory.lastEntry().id().text();
      ledger.vials.add(dated.vial(id, id, read.orThrow(), mix));
    }
    return "educator receives a vial of " + mix.label() + ", " + dated + Actor.outcome(read);
  }

  String amendVial(SplittableRandom random) {
    if (ledger.vials.isEmpty()) {
      return "";
    }
    int which = random.nextInt(ledger.vials.size());
    Ledger.Vial old = ledger.vials.get(which);
    Dated dated = Dated.of(random, actor.now).madeAs(old.made());
    Reading<Long> read =
        house.vials.amend(
            House.EDUCATOR,
            house.course(),
            new EntryId(old.entry()),
            dated.draft(old.mix()),
            "read again");
    if (read.found().isPresent()) {
      String id = house.memory.lastEntry().id().text();
      ledger.vials.set(which, dated.vial(old.root(), id, old.number(), old.mix()));
    }
    return "educator amends the vial of " + old.mix().label() + ", " + dated + Actor.outcome(read);
  }

  /** Something befalls one of his vials, or somebody says that it may be used all the same. */
  String vialFate(SplittableRandom random) {
    if (ledger.vials.isEmpty()) {
      return "";
    }
    Ledger.Vial vial = ledger.vials.get(random.nextInt(ledger.vials.size()));
    return random.nextInt(3) == 0 ? judge(vial, random) : befall(vial, random);
  }

  private String befall(Ledger.Vial vial, SplittableRandom random) {
    String fate = FATES[random.nextInt(FATES.length)];
    String day = Minutes.date(actor.now - Ledger.DAY * random.nextInt(5));
    Reading<Long> read =
        house.vials.befell(
            House.EDUCATOR,
            house.course(),
            new EntryId(vial.entry()),
            new BefellDraft(fate, day, "", "", "", "he says so"));
    if (read.found().isPresent() && !fate.equals(FATES[0])) {
      ledger.watch.spoilt.add(vial.root());
    }
    return "the vial of " + vial.mix().label() + ": " + fate + Actor.outcome(read);
  }

  private String judge(Ledger.Vial vial, SplittableRandom random) {
    Account by = random.nextInt(3) > 0 ? House.PRESCRIBER : House.EDUCATOR;
    Reading<Long> read =
        house.vials.judge(
            by, house.course(), new EntryId(vial.entry()), house.file().basis(), "looked at it");
    if (read.found().isPresent()) {
      ledger.watch.spoilt.remove(vial.root());
      ledger.watch.isJudgedByOthers |= by.equals(House.EDUCATOR);
    }
    return by.fullName() + " judges the vial of " + vial.mix().label() + Actor.outcome(read);
  }

  /** The dates of a vial: minutes, -1 where not said; the last day counts from 1970. */
  private record Dated(long made, long label, long opened, int days) {

    static Dated of(SplittableRandom random, long now) {
      long made = random.nextInt(4) == 0 ? -1 : now - Ledger.DAY * random.nextInt(50);
      long label = Minutes.dayOf(now) + (random.nextInt(6) == 0 ? random.nextInt(4) : 700);
      long opened = random.nextInt(5) == 0 ? now : -1;
      int days = random.nextInt(3) == 0 ? 0 : 1 + random.nextInt(40);
      return new Dated(made, label, opened, days);
    }

    Dated madeAs(long said) {
      return new Dated(said, label, opened, days);
    }

    VialDraft draft(Mix mix) {
      return Desk.vial(mix, made, label, opened, days);
    }

    Ledger.Vial vial(String root, String entry, long number, Mix mix) {
      return new Ledger.Vial(root, entry, number, mix, made, label, opened, opened < 0 ? 0 : days);
    }

    @Override
    public String toString() {
      return "made "
          + (made < 0 ? "not said" : Minutes.date(made))
          + ", label "
          + Minutes.date(label * Ledger.DAY)
          + (opened < 0 ? "" : ", opened " + Minutes.date(opened) + " for " + days + " days");
    }
  }

  /** One or two injections from before, with or without a time. */
  String past(SplittableRandom random) {
    boolean dated = random.nextBoolean();
    Mix mix = random.nextInt(3) == 0 ? Mix.A40 : ledger.plan().mix();
    long drawn = 10L * (1 + random.nextInt(40));
    long lasted = random.nextInt(3) == 0 ? 300 : random.nextBoolean() ? 150 : 30;
    int grade = random.nextInt(5);
    long at = actor.now - Ledger.DAY * (5 + random.nextInt(100));
    var injection =
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(drawn),
            1.0,
            Optional.of(1.0),
            Grade.of(grade).orElseThrow(),
            new SoftAfter.Exactly(TimeSpan.ofMinutes(lasted)),
            dated
                ? Optional.of(
                    new PastInjection.Setting(
                        Instant.ofEpochSecond(at * 60), new PreparationId(mix.id), "u100-1"))
                : Optional.empty());
    long entry =
        house.memory.keep(
            new PastHistory("MR-1", "unknown", List.of(injection)),
            Instant.ofEpochSecond(actor.now * 60));
    if (dated) {
      ledger.told.add(told(entry, mix, at, drawn, lasted, grade));
    } else {
      ledger.before.add(new Ledger.Before(entry, drawn, lasted));
    }
    return "brought in from before: "
        + drawn
        + " uL"
        + (dated ? " of " + mix.label() + " at " + Minutes.local(at) : ", no time")
        + ", grade "
        + grade
        + ", "
        + lasted
        + " min";
  }

  /** One with a time is read as a report of which nobody asked what went wrong. */
  private static Told told(long entry, Mix mix, long at, long drawn, long lasted, int grade) {
    return new Told(
        new Told.Said(at, drawn, grade, "exactly", lasted, 0, "not_asked", "home", "", lasted),
        entry,
        "",
        mix,
        /* ordered= */ 0,
        /* observed= */ false,
        Told.Drawn.UNKNOWN,
        /* byPrescriber= */ false);
  }
}
