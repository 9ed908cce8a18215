package rungwise.dosing.choice;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.response.Forecast;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.ResponseModel;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** The model may hold or lower what the rule proposes; it never raises. */
final class ByRuleAndModelTest {

  private static final List<String> VOLUMES = List.of("0.12", "0.25", "0.5");
  private static final List<SoftAfter> DURATIONS =
      List.of(new SoftAfter.NotKnown(), minutes(20), minutes(55), minutes(90), minutes(150));

  private static final ResponseModel MODEL = model(1.2);

  /** Invented; a lower mean expects more of every volume. */
  private static ResponseModel model(double mean) {
    var gammas = new HashMap<String, Double>();
    for (AetiologyGroup group : AetiologyGroup.values()) {
      gammas.put(group.token(), 0.0);
    }
    gammas.remove(AetiologyGroup.MIXED.token());
    return new ResponseModel(
        "invented version 1",
        new Population(mean, Map.copyOf(gammas), 1.2, 2.5, -1.5, 1.5, 3.9, 0.6, 0.5),
        SamplePreparations.ALPROSTADIL_20);
  }

  private static Protocol limited(int of120, int of240) {
    var source = new Source.Assumption("for this test");
    return LabelWorld.protocol()
        .with(
            new Protocol.Chances(
                Optional.of(new Sourced<>(of120, source)),
                Optional.of(new Sourced<>(of240, source))));
  }

  private static Advice advise(LabelWorld world, ResponseModel model) {
    return Dosing.advise(world.question(), new ByRuleAndModel(model));
  }

  private static List<TitrationRule> rules(Advice advice) {
    return advice.proposal().reasons().stream().map(Reason::rule).toList();
  }

  private static List<LabelWorld> worlds(Protocol protocol) {
    var worlds = new ArrayList<LabelWorld>();
    worlds.add(new LabelWorld().by(protocol));
    for (String first : VOLUMES) {
      for (Grade grade : Grade.values()) {
        for (SoftAfter soft : DURATIONS) {
          worlds.add(new LabelWorld().by(protocol).injected(first, grade, soft));
          for (String second : VOLUMES) {
            for (Grade then : Grade.values()) {
              worlds.add(
                  new LabelWorld()
                      .by(protocol)
                      .injected(first, grade, soft)
                      .injected(second, then, minutes(45)));
            }
          }
        }
      }
    }
    return worlds;
  }

  @Test
  void what_waits_for_partial_responses_is_held_or_lowered_too_and_never_raised() {
    var source = new Source.Assumption("for this test");
    int waited = 0;
    for (Protocol once : List.of(limited(5, 1), limited(50, 5), limited(999, 999))) {
      Protocol twice =
          once.with(
              once.more().withAfterPartial(Optional.of(new Protocol.AfterPartial(2, source))));
      List<LabelWorld> each = worlds(once);
      List<LabelWorld> patient = worlds(twice);
      for (int at = 0; at < each.size(); at++) {
        Optional<Volume> one = advise(each.get(at), MODEL).decision().proposed();
        Optional<Volume> two = advise(patient.get(at), MODEL).decision().proposed();

        if (two.isPresent()) {
          assertThat(one).isPresent();
          assertThat(two.get().isMoreThan(one.get())).isFalse();
        }
        waited += two.equals(one) ? 0 : 1;
      }
    }
    assertThat(waited).isPositive();
  }

  @Test
  void no_volume_is_ever_above_the_rules_own_and_each_is_within_the_limits() {
    int lowered = 0;
    for (Protocol protocol : List.of(limited(5, 1), limited(50, 5), limited(999, 999))) {
      for (LabelWorld world : worlds(protocol)) {
        Question question = world.question();
        Optional<Volume> byRule = byReport(world).decision().proposed();
        Optional<Volume> byBoth =
            Dosing.advise(question, new ByRuleAndModel(MODEL)).decision().proposed();

        if (byBoth.isPresent()) {
          assertThat(byRule).isPresent();
          assertThat(byBoth.get().isMoreThan(byRule.get())).isFalse();
          assertThat(chanceOf120(question, byBoth.get()))
              .isLessThanOrEqualTo(
                  protocol.chances().of120Minutes().orElseThrow().value() / 1000.0);
        }
        lowered += byBoth.equals(byRule) ? 0 : 1;
      }
    }
    assertThat(lowered).isGreaterThan(100);
  }

  /** What the same reports lead to under a protocol without limits. */
  private static Advice byReport(LabelWorld world) {
    Protocol limited = world.question().protocol();
    Advice advice = Dosing.advise(world.by(limited.with(Protocol.Chances.NOT_ASKED)).question());
    world.by(limited);
    return advice;
  }

  private static double chanceOf120(Question question, Volume volume) {
    return MODEL
        .prospect(
            question.group(),
            question.preparation(),
            question.history(),
            question.history().injections())
        .orElseThrow()
        .forecast(volume)
        .useful120();
  }

  @Test
  void a_step_up_that_the_model_finds_too_long_becomes_the_same_dose_with_chance_and_limit() {
    LabelWorld world = new LabelWorld().injected("0.25", Grade.FIRM_NOT_USABLE, minutes(20));
    int limit = (int) Math.ceil(1000 * chanceOf120(world.question(), ml("0.25")));
    world.by(limited(limit, 999));

    Advice byRule = byReport(world);
    Advice advice = advise(world, MODEL);

    assertThat(byRule.decision()).isEqualTo(new Decision.StepUp(ml("0.5")));
    assertThat(advice.decision()).isEqualTo(new Decision.Repeat(ml("0.25")));
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.MODEL_LOWERS);
    double chance = chanceOf120(world.question(), ml("0.5"));
    assertThat(advice.reason().facts())
        .contains(
            Fact.said("volume by rule", "0.5 mL"),
            Fact.said(
                "chance of 120 minutes or more",
                (long) Math.ceil(chance * 1000) + " in 1000, limit " + limit + " in 1000"))
        .anyMatch(fact -> fact.toString().startsWith("chance of 240 minutes or more: "));
    assertThat(rules(advice)).contains(TitrationRule.STEP_AFTER_PARTIAL);
    assertThat(advice.record()).contains("choice: by rule and model invented version 1");
    assertThat(KeptAdvice.of(advice).choice()).contains("by rule and model invented version 1");
    assertThat(byRule.record()).contains("choice: by rule\n");
    assertThat(new KeptAdvice(byRule.record(), Optional.empty()).choice()).contains("by rule");
    assertThat(new KeptAdvice("none", Optional.empty()).choice()).isEmpty();
  }

  @Test
  void where_no_step_is_within_the_limit_a_prescriber_looks_at_the_whole() {
    Advice advice = advise(new LabelWorld().by(limited(1, 1)), model(-3));

    assertThat(advice.decision()).isEqualTo(new Decision.Refer());
    assertThat(advice.reason().rule()).isEqualTo(TitrationRule.MODEL_FORBIDS);
  }

  @Test
  void within_the_limits_the_rule_decides_and_the_chances_stand_below() {
    LabelWorld world =
        new LabelWorld().by(limited(999, 999)).injected("0.25", Grade.FULLER, minutes(20));

    Advice advice = advise(world, MODEL);

    assertThat(advice.decision()).isEqualTo(new Decision.StepUp(ml("0.5")));
    assertThat(rules(advice))
        .containsExactly(TitrationRule.STEP_AFTER_PARTIAL, TitrationRule.MODEL_AGREES);
  }

  @Test
  void without_limits_in_the_protocol_the_model_is_not_asked() {
    LabelWorld world = new LabelWorld().injected("0.25", Grade.FULLER, minutes(20));

    assertThat(advise(world, model(-3)).proposal().decision())
        .isEqualTo(Dosing.advise(world.question()).decision());
    assertThat(rules(advise(world, MODEL))).containsExactly(TitrationRule.STEP_AFTER_PARTIAL);
  }

  @Test
  void limits_that_nobody_can_keep_are_never_dropped_a_prescriber_decides() {
    LabelWorld mixed = new LabelWorld().by(limited(999, 999)).group(AetiologyGroup.MIXED);

    Advice unknownGroup = advise(mixed, MODEL);
    Advice noPopulation = Dosing.advise(mixed.question());

    for (Advice advice : List.of(unknownGroup, noPopulation)) {
      assertThat(advice.decision()).isEqualTo(new Decision.Refer());
      assertThat(rules(advice))
          .containsExactly(TitrationRule.MODEL_SILENT, TitrationRule.FIRST_DOSE);
      assertThat(advice.reason().facts()).containsExactly(Fact.said("volume by rule", "0.12 mL"));
    }
    assertThat(
            MODEL.prospect(
                AetiologyGroup.VASCULOGENIC,
                SamplePreparations.THREE_DRUG,
                mixed.question().history(),
                List.of()))
        .isEmpty();
  }

  @Test
  void a_stop_stays_a_stop_where_nobody_can_keep_the_limits() {
    LabelWorld world =
        new LabelWorld().by(limited(9, 9)).injected("0.12", Grade.USABLE, minutes(150));

    assertThat(Dosing.advise(world.question()).decision()).isEqualTo(byReport(world).decision());
    assertThat(rules(Dosing.advise(world.question()))).doesNotContain(TitrationRule.MODEL_SILENT);
  }

  @Test
  void a_report_that_the_model_finds_very_unlikely_is_flagged_and_changes_no_dose() {
    LabelWorld world =
        new LabelWorld()
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.12", Grade.FULLY_FIRM, minutes(55));

    Advice advice = advise(world, MODEL);

    assertThat(rules(advice)).contains(TitrationRule.REPORT_UNLIKELY);
    assertThat(advice.decision()).isEqualTo(Dosing.advise(world.question()).decision());
    assertThat(TitrationRule.REPORT_UNLIKELY.wording())
        .contains("check the mark, the volume and the vial first");
    assertThat(rules(advise(new LabelWorld().injected("0.25", Grade.FULLER, minutes(9)), MODEL)))
        .doesNotContain(TitrationRule.REPORT_UNLIKELY);
  }

  @Test
  void a_report_of_two_hours_or_more_is_never_doubted() {
    assertThat(rules(afterThreeOfNothing(minutes(119)))).contains(TitrationRule.REPORT_UNLIKELY);
    for (SoftAfter tooLong :
        List.of(
            minutes(120),
            new SoftAfter.AtLeast(TimeSpan.ofMinutes(20)),
            new SoftAfter.Between(TimeSpan.ofMinutes(60), TimeSpan.ofMinutes(121)))) {
      assertThat(rules(afterThreeOfNothing(tooLong))).doesNotContain(TitrationRule.REPORT_UNLIKELY);
    }
  }

  private static Advice afterThreeOfNothing(SoftAfter soft) {
    return advise(
        new LabelWorld()
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.5", Grade.NONE, minutes(1))
            .injected("0.12", Grade.FULLY_FIRM, soft),
        MODEL);
  }

  /** 5 of 1,000 are within a limit of 5 of 1,000, and what is above it is not, for either limit. */
  @Test
  void a_chance_at_the_limit_is_within_it() {
    Protocol.Chances limits = limited(5, 1).chances();

    assertThat(ByRuleAndModel.isWithin(limits, new Forecast(0.5, 0.1, 0.005, 0.001))).isTrue();
    assertThat(ByRuleAndModel.isWithin(limits, new Forecast(0.5, 0.1, 0.0051, 0.001))).isFalse();
    assertThat(ByRuleAndModel.isWithin(limits, new Forecast(0.5, 0.1, 0.005, 0.0011))).isFalse();
  }

  @Test
  void the_reason_says_what_was_ordered_beside_what_was_drawn() {
    Advice advice =
        Dosing.advise(new LabelWorld().injected("0.25", Grade.FULLER, minutes(20)).question());

    assertThat(advice.reason().facts())
        .contains(Fact.said("drawn", "0.25 mL"), Fact.said("ordered", "0.25 mL"));
  }
}
