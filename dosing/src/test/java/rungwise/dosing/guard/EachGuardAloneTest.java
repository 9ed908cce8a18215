package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.FRESH;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Circumstances.Unfinished;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.supply.Freshness;
import rungwise.dosing.supply.VialCare;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.supply.VialLimit;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * Every guard of the table that blocks, in a case in which it is the only one that does: without it
 * the man would inject.
 */
final class EachGuardAloneTest {

  static final Instant LATER = START.plus(Duration.ofDays(60));

  /** A case in which one guard alone blocks. */
  record Alone(GuardRule rule, Supplier<Clearance> asked) {
    @Override
    public String toString() {
      return rule.name();
    }
  }

  private static final Instant A_DAY_LESS = START.plus(Duration.ofHours(24)).minusMillis(1);

  static LabelWorld usual() {
    return new LabelWorld().injected("0.25", Grade.USABLE, minutes(40));
  }

  static Clearance home(LabelWorld world, String volume) {
    return asked(world.question(), volume, Place.HOME);
  }

  static Clearance inClinic(LabelWorld world, String volume) {
    return asked(world.question(), volume, Place.CLINIC);
  }

  private static Clearance asked(Question question, String volume, Place place) {
    return Dosing.mayInject(
        question, Optional.of(new SignedDose(ml(volume), place, Set.of(), Optional.empty())));
  }

  private static Ladder ladder(String ceiling, String... rungs) {
    return new Ladder(
        new LabelWorld().ladder().preparation(),
        Barrels.U100_1,
        Stream.of(rungs).map(LabelWorld::ml).toList(),
        ml(ceiling));
  }

  static List<Alone> cases() {
    return Stream.of(
            ofTheMan(),
            UpkeepAlone.cases(),
            TakenOverTest.cases(),
            beforeHome(),
            ofTheVial(),
            ofTheDose(),
            ofTheSyringe())
        .flatMap(List::stream)
        .toList();
  }

  private static List<Alone> ofTheMan() {
    return List.of(
        new Alone(
            GuardRule.CONTRAINDICATED,
            () -> home(usual().screened(Condition.SICKLE_CELL, Answer.YES), "0.25")),
        new Alone(
            GuardRule.SCREENING_OPEN,
            () -> home(usual().screened(Condition.PENILE_IMPLANT, Answer.NOT_KNOWN), "0.25")),
        new Alone(
            GuardRule.DECISION_MISSING,
            () -> home(usual().screened(Condition.MAO_INHIBITOR, Answer.YES), "0.25")),
        new Alone(
            GuardRule.SCREENING_EXPIRED,
            () -> inClinic(usual().at(Instant.parse("2027-03-02T20:00:00Z")), "0.25")),
        new Alone(
            GuardRule.EMERGENCY_OPEN,
            () -> home(usual().injected("0.5", Grade.USABLE, minutes(240)), "0.25")),
        new Alone(GuardRule.PROTOCOL_NOT_FOR, EachGuardAloneTest::byAnothersProtocol),
        new Alone(GuardRule.REPORT_UNFINISHED, () -> home(usual().around(unfinished()), "0.25")),
        new Alone(
            GuardRule.PAST_LONG,
            () -> home(usual().unmapped("0.5", Grade.USABLE, minutes(120)), "0.25")),
        new Alone(GuardRule.PAST_OPEN, () -> home(usual().withOpenPast(), "0.25")),
        new Alone(
            GuardRule.UNDER_OBSERVATION,
            () -> home(usual().observing(LATER.minusSeconds(1), "0.25"), "0.25")));
  }

  private static Clearance byAnothersProtocol() {
    Preparation mixture = SamplePreparations.THREE_DRUG_STRONGER;
    Protocol forAnother =
        LabelSheet.byVolume(
                Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL))
            .protocol()
            .asWrittenFor(SamplePreparations.THREE_DRUG);
    LabelWorld world = usual().with(mixture).holding(LabelWorld.vial(FRESH, mixture.composition()));
    return asked(
        world
            .by(forAnother)
            .question(new Ladder(mixture, Barrels.U100_1, List.of(ml("0.1")), ml("0.5"))),
        "0.1",
        Place.CLINIC);
  }

  private static Circumstances unfinished() {
    return Circumstances.NONE.withUnfinished(
        List.of(new Unfinished(LATER.minusSeconds(60), Optional.empty())));
  }

  private static List<Alone> beforeHome() {
    return List.of(
        new Alone(GuardRule.HOME_NOT_READY, () -> home(usual().ready(Set.of()), "0.25")),
        new Alone(
            GuardRule.READINESS_EXPIRED,
            () ->
                home(
                    usual()
                        .ready(Set.of())
                        .around(Circumstances.NONE.withExpired(EnumSet.allOf(Readiness.class))),
                    "0.25")),
        new Alone(
            GuardRule.FIRST_IN_CLINIC,
            () ->
                home(
                    new LabelWorld().at(Place.HOME).injected("0.25", Grade.USABLE, minutes(40)),
                    "0.25")),
        new Alone(
            GuardRule.AFTER_EMERGENCY,
            () -> home(usual().injected("0.5", Grade.USABLE, minutes(240)).reviewed(), "0.25")),
        new Alone(GuardRule.PAIR_NOT_CREDITED, () -> home(CrowdedWorlds.pair(), "0.25")),
        new Alone(GuardRule.NO_ORDER, () -> Dosing.mayInject(usual().question(), Optional.empty())),
        new Alone(
            GuardRule.SPACING,
            () -> home(usual().at(START.plus(Duration.ofHours(23)).plusSeconds(3599)), "0.25")),
        new Alone(GuardRule.THIRD_IN_24_HOURS, EachGuardAloneTest::thirdInADay),
        new Alone(GuardRule.TOGETHER_ABOVE_LIMIT, EachGuardAloneTest::together),
        new Alone(GuardRule.WEEKLY_COUNT, () -> home(CrowdedWorlds.threeInAWeek(), "0.25")),
        new Alone(
            GuardRule.PDE5_HOURS, () -> home(usual().tookTablet(LATER.minusSeconds(60)), "0.25")));
  }

  private static List<Alone> ofTheVial() {
    return List.of(
        new Alone(GuardRule.NO_VIAL, () -> home(usual().withoutVial(), "0.25")),
        new Alone(
            GuardRule.VIAL_DIFFERS,
            () ->
                home(usual().holding(LabelWorld.vial(FRESH, "alprostadil 40 mcg per mL")), "0.25")),
        new Alone(
            GuardRule.VIAL_PAST_DATE,
            () -> home(usual().holding(ending(VialEnd.byLabel(LATER))), "0.25")),
        new Alone(
            GuardRule.VIAL_OPEN_TOO_LONG,
            () ->
                home(
                    usual()
                        .holding(
                            ending(
                                new VialEnd(
                                    LATER, new VialLimit.DaysOpen(28), VialEnd.InUse.KNOWN))),
                    "0.25")),
        new Alone(GuardRule.VIAL_GONE, () -> home(usual().holding(cared(VialCare.GONE)), "0.25")),
        new Alone(
            GuardRule.VIAL_TO_BE_JUDGED,
            () -> home(usual().holding(cared(VialCare.TO_BE_JUDGED)), "0.25")),
        new Alone(
            GuardRule.IN_USE_NOT_STATED,
            () ->
                home(
                    usual()
                        .holding(
                            ending(
                                new VialEnd(
                                    LATER.plusMillis(1),
                                    new VialLimit.LabelDate(),
                                    VialEnd.InUse.OPEN_AND_NOT_STATED))),
                    "0.25")),
        new Alone(GuardRule.NEW_STOCK, () -> home(onANewVial(), "0.25")));
  }

  /** Of half the strength, after a volume of the usual one, on a schedule signed before. */
  private static Clearance ofWeaker(String before, SoftAfter soft, String volume) {
    Preparation weaker = LabelWorld.ALPROSTADIL_10;
    LabelWorld world =
        new LabelWorld()
            .with(weaker)
            .injectedWith(SamplePreparations.ALPROSTADIL_20, before, soft)
            .holding(LabelWorld.vial(FRESH, weaker.composition()));
    var ladder = new Ladder(weaker, Barrels.U100_1, List.of(ml("0.25"), ml("0.5")), ml("1"));
    return asked(world.question(ladder), volume, Place.CLINIC);
  }

  private static VialInHand cared(VialCare care) {
    return new VialInHand(
        FRESH,
        new VialInHand.Label(ALPROSTADIL_20_LABEL),
        VialEnd.byLabel(LATER.plusMillis(1)),
        care);
  }

  private static VialInHand ending(VialEnd end) {
    return new VialInHand(FRESH, new VialInHand.Label(ALPROSTADIL_20_LABEL), end);
  }

  private static LabelWorld onANewVial() {
    return new LabelWorld()
        .injected("0.12", Grade.FULLER, minutes(20))
        .from(new Stock("old vial", Freshness.OLD))
        .injected("0.25", Grade.USABLE, minutes(40))
        .holding(LabelWorld.vial(new Stock("second vial", Freshness.FRESH), ALPROSTADIL_20_LABEL));
  }

  /** Two doses within a day, each of which is allowed alone. */
  private static Clearance together() {
    Question question = usual().at(A_DAY_LESS).question(ladder("0.49", "0.12", "0.25"));
    return new Clearance(
        without(TimeGuards.ask(question, ml("0.25"), Place.HOME), GuardRule.SPACING));
  }

  /** The spacing, which speaks too, can never be overridden within a day. */
  private static Clearance thirdInADay() {
    return new Clearance(
        without(
            TimeGuards.ask(CrowdedWorlds.twoInADay().question(), ml("0.12"), Place.CLINIC),
            GuardRule.SPACING));
  }

  private static Protocol withCare() {
    return LabelSheet.label().careAbove("5").protocol();
  }

  private static List<Alone> ofTheSyringe() {
    Question open = usual().question();
    return List.of(
        new Alone(
            GuardRule.ABOVE_CEILING,
            () -> {
              // A ladder never passes its own ceiling, so the volume is no step of it either.
              List<Verdict> said =
                  DoseGuards.ask(usual().question(ladder("0.25", "0.12", "0.25")), ml("0.26"));
              return new Clearance(without(said, GuardRule.NOT_A_STEP));
            }),
        new Alone(GuardRule.ABOVE_COMPONENT_LIMIT, EachGuardAloneTest::aboveItsLimit),
        new Alone(
            GuardRule.BETWEEN_MARKS,
            () -> {
              // No ladder has a rung between two lines, so it is no step of one either.
              List<Verdict> said = DoseGuards.ask(open, ml("0.245"));
              return new Clearance(without(said, GuardRule.NOT_A_STEP));
            }),
        new Alone(
            GuardRule.TOO_SMALL_TO_MEASURE,
            () -> {
              Question small =
                  usual()
                      .question(
                          new Ladder(
                              open.preparation(),
                              Barrels.U100_0_3_HALF_UNIT,
                              List.of(ml("0.015"), ml("0.25")),
                              ml("0.3")));
              // So small a volume is never accurate: that hold always comes with it.
              List<Verdict> said = DoseGuards.ask(small, ml("0.015"));
              return new Clearance(without(said, GuardRule.HARD_TO_MEASURE));
            }));
  }

  private static List<Alone> ofTheDose() {
    return List.of(
        new Alone(GuardRule.NOT_A_STEP, () -> home(usual(), "0.24")),
        new Alone(GuardRule.MORE_THAN_ONE_STEP_UP, () -> home(usual(), "0.75")),
        new Alone(GuardRule.NO_FIRST_DOSE, () -> ofWeaker("0.12", minutes(20), "0.25")),
        new Alone(GuardRule.FIRST_AFTER_TOO_LONG, () -> ofWeaker("0.25", minutes(90), "0.25")),
        new Alone(
            GuardRule.VOLUME_CLOSED,
            () -> home(usual().injected("0.25", Grade.USABLE, minutes(120)), "0.25")),
        new Alone(
            GuardRule.SIGN_ANEW,
            () -> home(usual().injected("0.25", Grade.USABLE, minutes(61)), "0.25")),
        new Alone(
            GuardRule.HIGHER_AFTER_LONG,
            () -> home(usual().injected("0.25", Grade.FULLER, new SoftAfter.NotKnown()), "0.5")),
        new Alone(
            GuardRule.CARE_ABOVE,
            () ->
                home(usual().by(withCare()).screened(Condition.STABLE_ANGINA, Answer.YES), "0.5")),
        new Alone(
            GuardRule.HARD_TO_MEASURE,
            () -> asked(usual().question(ladder("1", "0.08", "0.25")), "0.08", Place.HOME)),
        new Alone(
            GuardRule.NEXT_STEP_NOT_YET,
            () ->
                Dosing.mayTakeNextStep(
                    usual().question(),
                    new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.of(ml("0.5"))))));
  }

  private static List<Verdict> without(List<Verdict> verdicts, GuardRule rule) {
    return verdicts.stream().filter(verdict -> verdict.rule() != rule).toList();
  }

  private static Clearance aboveItsLimit() {
    Ingredient limited =
        new Ingredient(
            Component.ALPROSTADIL,
            Concentration.parse("20 mcg/mL").orThrow(),
            Optional.of(Mass.parse("5 mcg").orThrow()));
    var preparation =
        new Preparation(
            new PreparationId("limited"),
            "Limited",
            new Form.Solution(),
            List.of(limited),
            ml("0.25"),
            Optional.empty());
    var ladder = new Ladder(preparation, Barrels.U100_1, List.of(ml("0.25"), ml("0.26")), ml("1"));
    Question question = new LabelWorld().question(ladder);
    List<Verdict> said = DoseGuards.ask(question, Volume.ofMicrolitres(260));
    return new Clearance(without(said, GuardRule.MORE_THAN_ONE_STEP_UP));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void it_is_the_only_one_that_blocks(Alone alone) {
    Clearance clearance = alone.asked().get();

    assertThat(clearance.blocks()).extracting(Verdict::rule).containsExactly(alone.rule());
    assertThat(clearance.isClear()).isFalse();
  }

  @Test
  void every_guard_that_can_block_has_such_a_case() {
    List<GuardRule> blocking =
        Stream.of(GuardRule.values()).filter(rule -> rule.guardClass() != GuardClass.NOTE).toList();

    assertThat(cases()).extracting(Alone::rule).containsExactlyInAnyOrderElementsOf(blocking);
  }

  @Test
  void without_any_of_them_nothing_stops_him() {
    assertThat(home(usual(), "0.25").isClear()).isTrue();
    assertThat(home(usual(), "0.25").verdicts()).isEmpty();
  }
}
