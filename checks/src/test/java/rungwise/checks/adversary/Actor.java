package rungwise.checks.adversary;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.checks.adversary.law.Judge;
import rungwise.checks.adversary.law.Law;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Needed;
import rungwise.checks.adversary.law.Rulebook;
import rungwise.checks.adversary.law.Told;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Does what a prescriber and the clinic do, and writes down in plain words who said what. */
final class Actor {

  private static final String[] GROUPS = {
    "vasculogenic", "psychogenic", "mixed", "spinal_cord", "post_prostatectomy", "unknown"
  };
  private static final String[] BARRELS = {
    "u100-1", "u100-1", "u100-1", "u100-0.5", "u100-0.5", "u100-0.3", "u100-1-two", "ml-1"
  };
  private static final GuardRule[] HOLDS = {
    GuardRule.SPACING,
    GuardRule.WEEKLY_COUNT,
    GuardRule.NEW_STOCK,
    GuardRule.NO_VIAL,
    GuardRule.SCREENING_EXPIRED,
    GuardRule.PAIR_NOT_CREDITED
  };

  /** What can be overridden until a day only. */
  private static final Set<GuardRule> UNTIL =
      Set.of(
          GuardRule.SCREENING_EXPIRED,
          GuardRule.EXAMINATION_OVERDUE,
          GuardRule.EXAMINATION_LONG_OVERDUE,
          GuardRule.READINESS_EXPIRED,
          GuardRule.LAPSED);

  /** Some days that every protocol's grace allows. */
  private static final long GRACE = 20 * Ledger.DAY;

  final House house;
  final Ledger ledger;
  final Judge judge;
  long now;

  Actor(House house, Ledger ledger, Judge judge) {
    this.house = house;
    this.ledger = ledger;
    this.judge = judge;
  }

  /** Opens the course; gives back whether there is one now. */
  String open(SplittableRandom random) {
    Mix mix = Mix.any(random);
    String barrel = BARRELS[random.nextInt(BARRELS.length)];
    Rulebook rules = rulesFor(mix, random);
    String group = GROUPS[random.nextInt(GROUPS.length)];
    var opened = house.open(mix, barrel, rules, group);
    String words = "opens for " + mix + " in " + barrel + " by " + rules.name() + ", " + group;
    if (opened.found().isPresent()) {
      ledger.plans.add(new Ledger.Chosen(house.memory.lastNumber(), now, mix, barrel, rules));
      return words;
    }
    return words + ": refused " + opened.faults();
  }

  private static Rulebook rulesFor(Mix mix, SplittableRandom random) {
    if (!mix.isAlone()) {
      return switch (mix) {
        case M15_05_5 -> Rulebook.WEAKER_MIXTURE;
        case M30_2_20 -> Rulebook.STRONGER_MIXTURE;
        default -> Rulebook.MIXTURE;
      };
    }
    Rulebook[] all = {Rulebook.LABEL, Rulebook.LONGER_FRESH, Rulebook.LONGER_FRESH, Rulebook.UK};
    return all[random.nextInt(all.length)];
  }

  String plan(SplittableRandom random) {
    Ledger.Chosen old = ledger.plan();
    boolean sameMix = random.nextInt(4) == 0;
    Mix mix = sameMix ? old.mix() : Mix.any(random);
    if (!sameMix && random.nextBoolean()) {
      mix = random.nextBoolean() ? again(old.mix()) : Mix.A40;
    }
    String barrel = random.nextInt(3) == 0 ? BARRELS[random.nextInt(BARRELS.length)] : old.barrel();
    Rulebook rules = rulesFor(mix, random);
    var plan = new Plan(new PreparationId(mix.id), barrel, rules.name(), house.versionOf(rules));
    Reading<Long> read =
        house.titration.choosePlan(
            House.PRESCRIBER, house.course(), plan, house::isInUse, "considered");
    read.found()
        .ifPresent(
            entry -> ledger.plans.add(new Ledger.Chosen(entry, now, plan(plan), barrel, rules)));
    return "prescriber plans " + mix + " in " + barrel + " by " + rules.name() + outcome(read);
  }

  private static Mix plan(Plan plan) {
    return Stream.of(Mix.values())
        .filter(mix -> mix.id.equals(plan.preparation().value()))
        .findFirst()
        .orElseThrow();
  }

  private static Mix again(Mix mix) {
    return switch (mix) {
      case A20 -> Mix.A20_AGAIN;
      case M30_1_10 -> Mix.M30_1_10_AGAIN;
      default -> mix.isAlone() ? Mix.A20 : Mix.M30_1_10;
    };
  }

  static String outcome(Reading<?> read) {
    return read.found().isPresent() ? "" : ": refused " + read.faults();
  }

  /** What the product says of this moment. */
  CourseState state() {
    return house.ask(now);
  }

  /** The schedule, in microlitres. */
  List<Long> rungs() {
    return state().question().ladder().rungs().stream().map(Volume::microlitres).toList();
  }

  String sign(SplittableRandom random) {
    CourseState state = state();
    Advice advice = state.advice();
    Volume volume = volume(advice, random);
    boolean atHome = random.nextInt(10) < 6;
    Set<GuardRule> raised = raised(state, advice, volume, atHome);
    Set<GuardRule> overridden = overridden(raised, random);
    var signing =
        new Desk.Signing(
            volume.microlitres(),
            atHome,
            state.file().basis(),
            advice.decision().proposed().equals(Optional.of(volume)),
            overridden,
            UNTIL.stream().anyMatch(overridden::contains) ? now + GRACE : -1,
            atHome && random.nextInt(3) == 0);
    Reading<Long> read = house.titration.sign(House.PRESCRIBER, house.course(), Desk.sign(signing));
    judge.look(Law.RAISED_ONLY, !raised.containsAll(overridden));
    judge.look(Law.HOME_READY, atHome && isUnready());
    read.found().ifPresent(entry -> signed(entry, signing, raised));
    return "prescriber signs "
        + signing.volume()
        + " uL for "
        + (atHome ? "home" : "the clinic")
        + (signing.next() ? " with a next step" : "")
        + (overridden.isEmpty() ? "" : ", overrides " + overridden)
        + outcome(read);
  }

  /** Mostly the proposed dose, sometimes another one that is allowed, seldom any. */
  private static Volume volume(Advice advice, SplittableRandom random) {
    List<Volume> rungs = advice.steps().stream().map(Advice.StepVerdicts::volume).toList();
    List<Volume> allowed = rungs.stream().filter(advice::isAllowed).toList();
    int way = random.nextInt(10);
    if (way < 6 && advice.decision().proposed().isPresent()) {
      return advice.decision().proposed().get();
    }
    List<Volume> among = way < 9 && !allowed.isEmpty() ? allowed : rungs;
    return among.get(random.nextInt(among.size()));
  }

  private boolean isUnready() {
    return !ledger.ready.keySet().containsAll(Needed.forHome(ledger.plan().mix()));
  }

  private void signed(long entry, Desk.Signing signing, Set<GuardRule> raised) {
    if (!ledger.watch.isSound) {
      judge.fail(Law.UNSOUND_STOPS, "signed on a record that is not as it was written");
    }
    if (signing.atHome() && isUnready()) {
      judge.fail(Law.HOME_READY, "signed for home with only " + ledger.ready.keySet());
    }
    if (!raised.containsAll(signing.overridden())) {
      judge.fail(Law.RAISED_ONLY, signing.overridden() + " overridden, raised was " + raised);
    }
    DoseSigned fact = house.file().signedDose().orElseThrow().fact();
    ledger.orders.add(
        new Ledger.Signed(
            entry,
            now,
            ledger.plan().mix(),
            signing.volume(),
            signing.atHome(),
            signing.overridden().stream().map(GuardRule::name).collect(Collectors.toSet()),
            fact.nextStep().map(Volume::microlitres).orElse(0L),
            ledger.vial().map(Ledger.Vial::root).orElse(""),
            (Minutes.dayOf(signing.until()) + 1) * Ledger.DAY));
  }

  /** Everything that is said of a dose at its signing and that a prescriber may override. */
  private static Set<GuardRule> raised(
      CourseState state, Advice advice, Volume volume, boolean atHome) {
    var verdicts = new ArrayList<Verdict>(advice.courseVerdicts());
    verdicts.addAll(advice.verdictsOn(volume));
    if (atHome) {
      verdicts.addAll(advice.homeVerdicts());
    }
    verdicts.addAll(advice.timeVerdicts());
    verdicts.addAll(Dosing.mayInject(state.question(), Optional.empty()).verdicts());
    var raised = EnumSet.noneOf(GuardRule.class);
    verdicts.stream()
        .filter(verdict -> verdict.isBlock() && !verdict.isHardStop())
        .forEach(verdict -> raised.add(verdict.rule()));
    return raised;
  }

  private static Set<GuardRule> overridden(Set<GuardRule> raised, SplittableRandom random) {
    var chosen = EnumSet.noneOf(GuardRule.class);
    int way = random.nextInt(12);
    if (way > 1) {
      chosen.addAll(raised);
      if (way > 3) {
        chosen.removeIf(rule -> rule == GuardRule.SPACING || rule == GuardRule.WEEKLY_COUNT);
      }
    }
    if (way == 11) {
      chosen.add(HOLDS[random.nextInt(HOLDS.length)]);
    }
    return chosen;
  }

  /** With the time at which he was seen to be soft, or without. */
  String review(SplittableRandom random) {
    boolean seenSoft = random.nextBoolean();
    boolean endOpen = ledger.emergencies().stream().anyMatch(Told::isEndOpen);
    Reading<Long> read =
        house.lifting.reviewEmergency(
            House.PRESCRIBER,
            house.course(),
            seenSoft ? Minutes.date(now) : "",
            seenSoft ? Minutes.time(now) : "",
            "examined, no harm");
    judge.look(Law.REVIEW_NEEDS_END, endOpen && !seenSoft);
    if (read.found().isPresent()) {
      if (endOpen && !seenSoft) {
        judge.fail(Law.REVIEW_NEEDS_END, "reviewed without its end");
      }
      ledger.reviews.add(new Ledger.Reviewed(read.orThrow(), seenSoft));
    }
    return "prescriber reviews the emergency"
        + (seenSoft ? ", seen soft now, end not known" : "")
        + outcome(read);
  }

  /** A prescriber writes that a correction or a withdrawal is right. */
  String confirm(SplittableRandom random) {
    List<Told> struck = ledger.told.stream().filter(one -> !one.counts()).toList();
    if (struck.isEmpty()) {
      return "";
    }
    Told one = struck.get(random.nextInt(struck.size()));
    Optional<EntryId> correction =
        house.file().entries().stream()
            .filter(entry -> entry.corrects().map(EntryId::text).equals(Optional.of(one.id)))
            .map(CourseEntry::id)
            .findFirst();
    if (correction.isEmpty()) {
      return "";
    }
    Reading<Long> read =
        house.lifting.confirmCorrection(
            House.PRESCRIBER, house.course(), correction.get(), "asked him myself");
    if (read.found().isPresent()) {
      one.confirmed = true;
    }
    return "prescriber confirms what replaced the report of "
        + Minutes.local(one.at())
        + outcome(read);
  }

  String reopen(SplittableRandom random) {
    List<Long> rungs = rungs();
    long upTo = rungs.get(random.nextInt(rungs.size()));
    Reading<Long> read =
        house.lifting.reopen(House.PRESCRIBER, house.course(), upTo, "another cause was found");
    read.found()
        .ifPresent(
            entry -> ledger.reopened.add(new Ledger.Reopened(entry, ledger.plan().mix(), upTo)));
    return "prescriber reopens up to " + upTo + " uL" + outcome(read);
  }

  /** What only a prescriber may do, tried by somebody else. */
  String notAllowed(SplittableRandom random) {
    Account[] others = {House.EDUCATOR, House.ON_CALL, House.AUDITOR};
    Account other = others[random.nextInt(others.length)];
    var titration = house.titration;
    var id = house.course();
    CourseState state = state();
    long volume = rungs().getFirst();
    var signing =
        new Desk.Signing(
            volume,
            /* atHome= */ false,
            state.file().basis(),
            /* proposed= */ true,
            Set.of(),
            /* until= */ -1,
            /* next= */ false);
    Plan old = state.file().plan();
    var plan = new Plan(old.preparation(), "u100-0.3-half", old.protocol(), old.protocolVersion());
    Reading<Long> read =
        switch (random.nextInt(5)) {
          case 0 -> titration.sign(other, id, Desk.sign(signing));
          case 1 -> house.lifting.reviewEmergency(other, id, "seen");
          case 2 -> house.lifting.reopen(other, id, volume, "seen");
          case 3 -> titration.choosePlan(other, id, plan, house::isInUse, "wish");
          default -> house.screenings.decide(other, id, "LONG_ERECTION_BEFORE", "seen");
        };
    judge.look(Law.PRESCRIBER_ONLY, true);
    if (read.found().isPresent()) {
      judge.fail(Law.PRESCRIBER_ONLY, other.fullName() + " did what is a prescriber's");
    }
    return other.fullName() + " tries what is a prescriber's" + outcome(read);
  }
}
