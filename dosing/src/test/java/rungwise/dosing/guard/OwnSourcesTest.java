package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.FRESH;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelSheet;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.source.Source;
import rungwise.dosing.syringe.Barrels;

/** Each rule shows the source of its own number, and a mixture never a text of one component. */
final class OwnSourcesTest {

  private static final Preparation MIXTURE = SamplePreparations.THREE_DRUG;

  /** What the protocols of these tests give as the source of every number. */
  private static final String OWN = "assumption: for a test";

  private static LabelWorld onMixture() {
    return new LabelWorld()
        .with(MIXTURE)
        .holding(LabelWorld.vial(FRESH, MIXTURE.composition()))
        .by(
            LabelSheet.byVolume(
                    Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL))
                .protocol());
  }

  private static boolean isReadOfAlprostadilAlone(Source source) {
    return source instanceof Source.Published published
        && published.citation().isOfAlprostadilAlone();
  }

  private static Stream<Source> sources(Question question) {
    Advice advice = Dosing.advise(question);
    var signed =
        new SignedDose(
            question.ladder().first(), Place.HOME, Set.of(), question.ladder().above(ml("0.05")));
    return Stream.of(
            advice.proposal().reasons().stream().map(Reason::source),
            advice.courseVerdicts().stream().map(Verdict::source),
            advice.timeVerdicts().stream().map(Verdict::source),
            advice.homeVerdicts().stream().map(Verdict::source),
            advice.steps().stream().flatMap(one -> one.verdicts().stream()).map(Verdict::source),
            Dosing.mayInject(question, Optional.of(signed)).verdicts().stream()
                .map(Verdict::source),
            Dosing.mayInject(question, Optional.empty()).verdicts().stream().map(Verdict::source),
            Dosing.mayTakeNextStep(question, signed).verdicts().stream().map(Verdict::source),
            Dosing.raisedBy(question, ml("0.6"), Place.HOME).stream().map(Verdict::source))
        .flatMap(some -> some);
  }

  private static List<LabelWorld> worlds() {
    return List.of(
        onMixture(),
        onMixture().ready(Set.of()).withoutVial(),
        onMixture().screened(Condition.SICKLE_CELL, Answer.YES),
        onMixture().screened(Condition.PENILE_IMPLANT, Answer.NOT_KNOWN),
        onMixture().injected("0.05", Grade.NONE, minutes(20)),
        onMixture().injected("0.05", Grade.FIRM_NOT_USABLE, minutes(20)),
        onMixture().injected("0.05", Grade.USABLE, minutes(40)),
        onMixture().injected("0.05", Grade.USABLE, minutes(40)).at(START.plus(Duration.ofHours(1))),
        onMixture().injected("0.05", Grade.USABLE, minutes(90)),
        onMixture().injected("0.05", Grade.USABLE, minutes(150)),
        onMixture().injected("0.05", Grade.USABLE, minutes(250)),
        onMixture().injected("0.5", Grade.NONE, minutes(20)),
        onMixture().observing(START, "0.05"),
        onMixture().after(SamplePreparations.ALPROSTADIL_20, "0.25"));
  }

  @Test
  void no_rule_shows_a_mixture_a_text_about_alprostadil_alone_as_its_source() {
    assertThat(worlds())
        .allSatisfy(
            world ->
                assertThat(sources(world.question()))
                    .noneMatch(OwnSourcesTest::isReadOfAlprostadilAlone));
    assertThat(
            Stream.concat(
                    Arrays.stream(GuardRule.values()).map(GuardRule::source),
                    Arrays.stream(TitrationRule.values()).map(TitrationRule::source))
                .map(source -> OwnSources.forPreparation(source, MIXTURE)))
        .noneMatch(OwnSourcesTest::isReadOfAlprostadilAlone);
  }

  @Test
  void what_a_mixture_takes_over_from_a_label_says_so_and_names_it() {
    Source source = OwnSources.forPreparation(GuardRule.THIRD_IN_24_HOURS.source(), MIXTURE);

    assertThat(source).isInstanceOf(Source.Assumption.class);
    assertThat(source.words())
        .startsWith("assumption: as for alprostadil alone (US prescribing information")
        .contains("at most 2 doses in 24 h")
        .doesNotContain("read");
    assertThat(
            OwnSources.forPreparation(
                GuardRule.THIRD_IN_24_HOURS.source(), SamplePreparations.ALPROSTADIL_20))
        .isEqualTo(GuardRule.THIRD_IN_24_HOURS.source());
  }

  private static String sourceOf(List<Verdict> verdicts, GuardRule rule) {
    return verdicts.stream()
        .filter(one -> one.rule() == rule)
        .findFirst()
        .orElseThrow()
        .source()
        .words();
  }

  @Test
  void numbers_of_the_protocol_show_the_protocols_source() {
    Question recent =
        new LabelWorld()
            .injected("0.25", Grade.USABLE, minutes(40))
            .at(START.plus(Duration.ofHours(1)))
            .question();

    List<Verdict> raised = Dosing.raisedBy(recent, ml("1"), Place.HOME);

    assertThat(sourceOf(raised, GuardRule.SPACING)).isEqualTo(OWN);
    assertThat(sourceOf(raised, GuardRule.MORE_THAN_ONE_STEP_UP)).isEqualTo(OWN);
    assertThat(reasonOf(recent)).isEqualTo(OWN);
    assertThat(reasonOf(new LabelWorld().question())).isEqualTo(OWN);
    assertThat(reasonOf(new LabelWorld().injected("0.12", Grade.NONE, minutes(20)).question()))
        .isEqualTo(OWN);
  }

  private static String reasonOf(Question question) {
    return Dosing.advise(question).reason().source().words();
  }

  /** 0.6 mL is above the 0.5 mL of the protocol; 1 mL is the maximum of the preparation itself. */
  @Test
  void the_maximum_shows_whose_it_is() {
    assertThat(
            sourceOf(
                Dosing.raisedBy(onMixture().question(), ml("0.6"), Place.CLINIC),
                GuardRule.ABOVE_CEILING))
        .isEqualTo(OWN);
    assertThat(GuardRule.ABOVE_CEILING.source().words()).contains("as the clinic entered it");
  }

  private static Source ofCeiling(LabelWorld world, String ceiling) {
    Preparation preparation = world.ladder().preparation();
    return OwnSources.ofCeiling(
        world.question(new Ladder(preparation, Barrels.U100_1, List.of(ml("0.05")), ml(ceiling))));
  }

  private static LabelWorld limitedTo(String mcg) {
    return new LabelWorld()
        .by(LabelSheet.label().componentLimit(Component.ALPROSTADIL, mcg).protocol());
  }

  /** 60 mcg are 3 mL of 20 mcg/mL, 10 mcg are 0.5 mL, and 14 mcg 0.7 mL. */
  @Test
  void the_maximum_is_the_protocols_only_where_one_of_its_limits_is_passed_beyond_it() {
    Source clinics = GuardRule.ABOVE_CEILING.source();

    assertThat(ofCeiling(new LabelWorld(), "0.5")).isEqualTo(clinics);
    assertThat(ofCeiling(limitedTo("10"), "0.5").words()).isEqualTo(OWN);
    assertThat(ofCeiling(limitedTo("14"), "0.5")).isEqualTo(clinics);
    assertThat(ofCeiling(onMixture(), "0.5").words()).isEqualTo(OWN);
    assertThat(ofCeiling(onMixture(), "0.499")).isEqualTo(clinics);
  }

  @Test
  void a_limit_of_a_component_shows_the_limits_own_source() {
    Question limited =
        new LabelWorld()
            .by(LabelSheet.label().componentLimit(Component.ALPROSTADIL, "14").protocol())
            .question();

    assertThat(
            sourceOf(
                Dosing.raisedBy(limited, ml("0.75"), Place.CLINIC),
                GuardRule.ABOVE_COMPONENT_LIMIT))
        .isEqualTo(OWN);
  }
}
