package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.Circumstances.Unfinished;
import rungwise.dosing.history.EmergencyReview;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.dosing.syringe.Barrels;

/** What a verdict rests on stands in its facts where it is known, and only there. */
final class VerdictFactsTest {

  private static final Preparation OTHER = SamplePreparations.ALPROSTADIL_20;
  private static final Preparation WEAKER = LabelWorld.ALPROSTADIL_10;
  private static final Instant NOW = START.plus(Duration.ofDays(60));

  private static LabelWorld usual() {
    return new LabelWorld().injected("0.25", Grade.USABLE, minutes(40));
  }

  private static List<Fact> facts(List<Verdict> verdicts, GuardRule rule) {
    return verdicts.stream()
        .filter(one -> one.rule() == rule)
        .flatMap(one -> one.facts().stream())
        .toList();
  }

  private static List<Fact> home(LabelWorld world, String volume, GuardRule rule) {
    return facts(Dosing.raisedBy(world.question(), ml(volume), Place.HOME), rule);
  }

  @Test
  void of_a_dose_of_the_same_preparation_only_when_how_much_and_what_came_of_it() {
    LabelWorld world = usual().injected("0.25", Grade.USABLE, minutes(130));

    assertThat(home(world, "0.25", GuardRule.VOLUME_CLOSED))
        .containsExactly(
            new Fact.Happened("injected", START.plus(Duration.ofDays(2))),
            Fact.said("drawn", "0.25 mL"),
            Fact.said("response", "usable, soft after 2 h 10 min"));
  }

  @Test
  void of_a_dose_whose_day_is_not_known_that_it_was_before() {
    LabelWorld world = usual().undated("0.25", Grade.USABLE, minutes(130));

    assertThat(home(world, "0.25", GuardRule.VOLUME_CLOSED))
        .contains(new Fact.Happened("injected before", NOW));
  }

  @Test
  void of_a_dose_of_another_preparation_what_it_was() {
    Question question =
        new LabelWorld()
            .with(WEAKER)
            .injectedWith(OTHER, "0.25", minutes(130))
            .question(new Ladder(WEAKER, Barrels.U100_1, List.of(ml("0.25"), ml("0.5")), ml("1")));

    assertThat(facts(DoseGuards.ask(question, ml("0.5")), GuardRule.VOLUME_CLOSED))
        .contains(Fact.said("of", OTHER.composition()));
  }

  @Test
  void of_what_it_may_have_been_that_nobody_knows_the_vial() {
    Question asked = usual().question();
    Injection told =
        new LabelWorld()
            .with(WEAKER)
            .injected("0.5", Grade.USABLE, minutes(130))
            .question(asked.ladder())
            .history()
            .injections()
            .getFirst();
    List<Injection> injections = asked.history().injections();
    Question question = with(asked, history(injections, List.of(told), Before.NOTHING));

    assertThat(facts(DoseGuards.ask(question, ml("0.25")), GuardRule.VOLUME_CLOSED))
        .contains(Fact.said("of what, as the vial is not known", WEAKER.composition()));
  }

  private static History history(
      List<Injection> injections, List<Injection> mayHaveBeen, Before before) {
    List<EmergencyReview> reviews =
        before.nobodyKnows().isEmpty()
            ? List.of()
            : List.of(new EmergencyReview(99, Optional.empty()));
    return new History(
        injections, mayHaveBeen, List.of(), List.of(), List.of(), reviews, List.of(), before);
  }

  private static Question with(Question question, History history) {
    return new Question(
        question.group(),
        question.screening(),
        question.readiness(),
        question.protocol(),
        question.ladder(),
        history,
        question.vial(),
        question.circumstances(),
        question.now());
  }

  @Test
  void of_an_examination_since_when_it_is_due() {
    assertThat(examination(usual().examined(Optional.of(NOW.minus(Duration.ofDays(93))))))
        .isEqualTo(new Fact.Happened("examined", NOW.minus(Duration.ofDays(93))));
    assertThat(examination(usual().around(begun(NOW.minus(Duration.ofDays(93)))).examined(none())))
        .isEqualTo(new Fact.Happened("not examined; course begun", NOW.minus(Duration.ofDays(93))));
    assertThat(examination(usual().examined(none()))).isEqualTo(Fact.said("examined", "not known"));
    LabelWorld emergency =
        new LabelWorld()
            .examined(none())
            .injected("0.25", Grade.USABLE, minutes(240))
            .reviewed()
            .injected("0.12", Grade.FULLER, minutes(20));
    assertThat(examination(emergency))
        .isEqualTo(new Fact.Happened("not examined since an emergency", START));
  }

  /** The first fact of the examination that is overdue for more than he had. */
  private static Fact examination(LabelWorld world) {
    List<Fact> facts =
        facts(UpkeepGuards.ofTheDose(world.question(), ml("0.5")), GuardRule.EXAMINATION_OVERDUE);
    assertThat(facts)
        .hasSize(2)
        .last()
        .isEqualTo(Fact.said("months between two examinations", "3"));
    return facts.getFirst();
  }

  private static Optional<Instant> none() {
    return Optional.empty();
  }

  private static Circumstances begun(Instant at) {
    return new Circumstances(
        Optional.of(at),
        Optional.empty(),
        Optional.empty(),
        /* recalled= */ false,
        List.of(),
        Optional.empty(),
        List.of(),
        Set.of(),
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  @Test
  void who_was_never_examined_has_three_months_from_the_start_of_his_course() {
    LabelWorld world = usual().around(begun(NOW.minus(Duration.ofDays(80)))).examined(none());

    assertThat(UpkeepGuards.ofTheDose(world.question(), ml("0.5"))).isEmpty();
  }

  @Test
  void a_newer_version_forbids_what_passes_its_maximum_and_not_what_reaches_it() {
    assertThat(home(afterNewer("5"), "0.25", GuardRule.NEWER_VERSION_FORBIDS)).isEmpty();
    assertThat(home(afterNewer("4.9"), "0.25", GuardRule.NEWER_VERSION_FORBIDS))
        .contains(Fact.said("maximum dose", UpkeepAlone.upTo("4.9").ceiling().value()));
  }

  private static LabelWorld afterNewer(String mcg) {
    return usual().around(Circumstances.NONE.withNewer(List.of(UpkeepAlone.upTo(mcg))));
  }

  @Test
  void after_an_emergency_what_is_missing_and_nothing_else() {
    Fact examination = Fact.said("not on record since", "an examination");
    Fact dose = Fact.said("not on record since", "a dose in the clinic, over within the hour");
    LabelWorld reviewed = new LabelWorld().injected("0.25", Grade.USABLE, minutes(240)).reviewed();

    assertThat(home(reviewed.examined(none()), "0.12", GuardRule.AFTER_EMERGENCY))
        .contains(examination, dose);
    LabelWorld examined = reviewed.examined(Optional.of(START.plus(Duration.ofDays(1))));
    assertThat(home(examined, "0.12", GuardRule.AFTER_EMERGENCY))
        .contains(new Fact.Happened("injected", START), dose)
        .doesNotContain(examination);
    assertThat(
            home(
                examined.injected("0.12", Grade.FULLER, minutes(20)),
                "0.12",
                GuardRule.AFTER_EMERGENCY))
        .isEmpty();
  }

  @Test
  void after_an_emergency_of_nobody_knows_what_the_same() {
    var before =
        new Before(
            List.of(),
            List.of(),
            List.of(new Before.NobodyKnows(98, START, Grade.USABLE, minutes(250))),
            /* isOpen= */ false);
    Question question = with(usual().question(), history(List.of(), List.of(), before));

    assertThat(facts(CourseGuards.askForHome(question), GuardRule.AFTER_EMERGENCY))
        .contains(
            new Fact.Happened("injected before", START),
            Fact.said("of", "nobody knows what"),
            Fact.said("response", "usable, soft after 4 h 10 min"),
            Fact.said("not on record since", "a dose in the clinic, over within the hour"));
  }

  @Test
  void a_finding_on_record_after_a_signature_asks_for_another_and_one_before_does_not() {
    Question question = usual().around(Circumstances.NONE.withFound(8)).question();

    assertThat(CourseGuards.askSince(question, signedBy(7))).hasSize(1);
    assertThat(CourseGuards.askSince(question, signedBy(8))).isEmpty();
    assertThat(CourseGuards.askSince(question, signedBy(9))).isEmpty();
  }

  private static SignedDose signedBy(long entry) {
    return new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.empty(), entry);
  }

  @Test
  void of_what_has_run_out_for_how_many_months_it_holds() {
    Protocol label = LabelWorld.protocol();
    Source source = label.ceiling().source();
    Protocol held =
        new Protocol(
            label.name(),
            label.version(),
            label.title(),
            label.sample(),
            label.components(),
            label.starts(),
            label.steps(),
            label.strengths(),
            label.ceiling(),
            label.limits().with(CountedOption.READINESS_MONTHS, new Sourced<>(12, source)),
            label.more());
    LabelWorld world =
        usual()
            .by(held)
            .ready(Set.of())
            .around(Circumstances.NONE.withExpired(EnumSet.allOf(Readiness.class)));

    assertThat(home(world, "0.25", GuardRule.READINESS_EXPIRED))
        .contains(Fact.said("months for which it holds", "12"));
  }

  @Test
  void of_an_unfinished_report_when_he_injected_if_that_was_said() {
    Instant told = NOW.minusSeconds(60);
    var said = new Unfinished(told, Optional.of(told.minusSeconds(600)));
    var silent = new Unfinished(told, Optional.empty());

    assertThat(
            home(
                usual().around(Circumstances.NONE.withUnfinished(List.of(said))),
                "0.25",
                GuardRule.REPORT_UNFINISHED))
        .containsExactly(
            new Fact.Happened("told", told), new Fact.Happened("injected", told.minusSeconds(600)));
    assertThat(
            home(
                usual().around(Circumstances.NONE.withUnfinished(List.of(silent))),
                "0.25",
                GuardRule.REPORT_UNFINISHED))
        .containsExactly(new Fact.Happened("told", told));
  }
}
