package rungwise.clinic.screening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.screening.ScreeningView.Question;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Topic;
import rungwise.quantities.Reading;

/** The screening in words. The clock of the world stands at 2 March 2026, 10:00 in New York. */
final class ScreeningViewTest {

  private static final ClinicTime TIME = new ClinicTime(ZoneId.of("America/New_York"));

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  private final CourseId unscreened = world.openUnprepared("vasculogenic", "u100-1");
  private final CourseId screened = world.open();

  private ScreeningView view(CourseId id) {
    CourseState state = world.state(id);
    var views = new CourseViews(TIME, account -> "Dr. Example");
    return ScreeningView.of(state, views.of(state), TIME);
  }

  private static Question question(ScreeningView view, Condition condition) {
    return view.groups().stream()
        .flatMap(group -> group.questions().stream())
        .filter(one -> one.name().equals(condition.name()))
        .findFirst()
        .orElseThrow();
  }

  private Reading<Long> answer(CourseId id, ScreeningDraft draft) {
    return world.screenings().answer(Staff.EDUCATOR, id, draft);
  }

  private void examine(CourseId id, Answer scarring, String note) {
    world.screenings().examine(Staff.EDUCATOR, id, "2026-03-02", scarring.words(), note).orThrow();
  }

  @Test
  void nobody_was_asked_yet() {
    ScreeningView view = view(unscreened);

    long mustBeKnown =
        Arrays.stream(Condition.values())
            .filter(one -> one.findingFor(SamplePreparations.ALPROSTADIL_20).mustBeKnown())
            .count();
    assertThat(view.answer()).isEqualTo("Not screened yet: " + mustBeKnown + " questions open");
    assertThat(view.hasUnasked()).isTrue();
    assertThat(view.cardiac().words()).contains("not known");
    assertThat(question(view, Condition.SICKLE_CELL).last()).isEqualTo("not asked yet");
  }

  @Test
  void no_to_everything_stops_nothing_and_carries_its_date() {
    ScreeningView view = view(screened);

    assertThat(view.answer()).isEqualTo("Nothing in the screening stops him");
    assertThat(view.verdicts()).isEmpty();
    assertThat(view.hasUnasked()).isFalse();
    assertThat(view.cardiac().words()).isEqualTo("Cardiac class low");
    assertThat(question(view, Condition.SICKLE_CELL).last()).isEqualTo("no, 2 March 2026");
  }

  @Test
  void every_condition_is_asked_once_and_says_what_it_means_for_this_preparation() {
    ScreeningView alone = view(screened);
    ScreeningView mixture = view(world.openWith(SamplePreparations.THREE_DRUG, "u100-1"));

    assertThat(alone.groups().stream().flatMap(group -> group.questions().stream()))
        .extracting(Question::name)
        .containsExactlyInAnyOrder(
            Arrays.stream(Condition.values()).map(Condition::name).toArray(String[]::new));
    assertThat(question(alone, Condition.STABLE_ANGINA).meaning())
        .isEqualTo("nothing with this preparation");
    assertThat(question(mixture, Condition.STABLE_ANGINA).meaning())
        .isEqualTo("prescriber decides");
    assertThat(question(alone, Condition.SICKLE_CELL).meaning()).isEqualTo("contraindication");
    assertThat(question(alone, Condition.TRAZODONE).meaning()).isEqualTo("caution");
  }

  @Test
  void a_contraindication_is_named_and_goes_before_everything_else() {
    world.answer(screened, Condition.MAO_INHIBITOR, Answer.YES);
    world.answer(screened, Condition.SICKLE_CELL, Answer.YES);
    assertThat(view(screened).answer()).isEqualTo("Contraindicated: sickle cell disease or trait");

    world.answer(screened, Condition.PENILE_IMPLANT, Answer.YES);
    ScreeningView view = view(screened);

    assertThat(view.answer())
        .isEqualTo("Contraindicated: sickle cell disease or trait, and 1 more");
    assertThat(view.verdicts())
        .extracting(VerdictText::sentence)
        .containsExactly(
            "Contraindicated: sickle cell disease or trait.",
            "Contraindicated: a penile implant.",
            "A prescriber has to decide: an MAO inhibitor.");
  }

  @Test
  void few_open_questions_are_named_and_many_are_counted() {
    world.answer(screened, Condition.SICKLE_CELL, Answer.NOT_KNOWN);
    ScreeningView one = view(screened);

    assertThat(one.answer()).isEqualTo("1 question open");
    assertThat(one.verdicts())
        .singleElement()
        .extracting(VerdictText::sentence)
        .isEqualTo("1 question open: Sickle cell disease or trait.");
    assertThat(view(unscreened).verdicts().getFirst().sentence())
        .doesNotContain("Sickle cell disease");
  }

  @Test
  void a_condition_to_decide_on_stays_until_a_prescriber_writes_the_reason() {
    world.answer(screened, Condition.HEART_FAILURE_2, Answer.YES);
    ScreeningView before = view(screened);
    assertThat(before.answer()).isEqualTo("A prescriber has to decide");
    assertThat(before.undecided())
        .extracting(Question::name)
        .containsExactly(Condition.HEART_FAILURE_2.name());
    assertThat(before.cardiac().words()).isEqualTo("Cardiac class intermediate");
    assertThat(before.cardiac().because()).isEqualTo("Heart failure, NYHA class II (intermediate)");

    world
        .screenings()
        .decide(Staff.PRESCRIBER, screened, Condition.HEART_FAILURE_2.name(), "cardiologist agrees")
        .orThrow();

    ScreeningView after = view(screened);
    assertThat(after.answer()).isEqualTo("Nothing in the screening stops him");
    assertThat(after.undecided()).isEmpty();
    assertThat(after.decided())
        .singleElement()
        .satisfies(
            decided -> {
              assertThat(decided.by()).isEqualTo("Dr. Example");
              assertThat(decided.reason()).isEqualTo("cardiologist agrees");
            });
  }

  @Test
  void a_yes_that_was_denied_later_is_shown_with_both_entries_until_it_was_wrong() {
    world.answer(screened, Condition.SICKLE_CELL, Answer.YES);
    world.pass(Duration.ofDays(3));
    world.answer(screened, Condition.SICKLE_CELL, Answer.NO);

    ScreeningView view = view(screened);

    assertThat(view.answer()).startsWith("Contraindicated: sickle cell");
    assertThat(question(view, Condition.SICKLE_CELL).last()).isEqualTo("no, 5 March 2026");
    assertThat(question(view, Condition.SICKLE_CELL).counts())
        .isEqualTo("Counts as yes until a prescriber writes that the yes was wrong.");
    assertThat(view.kept())
        .singleElement()
        .satisfies(
            yes -> {
              assertThat(yes.said()).startsWith("Yes: Monday 2 March 2026");
              assertThat(yes.denied())
                  .startsWith("Later answered no: Thursday 5 March 2026")
                  .endsWith("It is kept and changes nothing.");
            });
    world.overturn(screened, Condition.SICKLE_CELL);
    assertThat(view(screened).kept()).isEmpty();
    assertThat(view(screened).answer()).isEqualTo("Nothing in the screening stops him");
  }

  @Test
  void a_form_that_was_opened_before_a_yes_was_found_wrong_does_not_say_it_again() {
    world.answer(screened, Condition.SICKLE_CELL, Answer.YES);
    long shown = view(screened).basis();
    world.overturn(screened, Condition.SICKLE_CELL);
    var stale =
        new ScreeningDraft(
            Map.of(Condition.SICKLE_CELL.name(), "yes"),
            /* stillTrue= */ false,
            Set.of(),
            Optional.of(shown));

    assertThat(answer(screened, stale).faults())
        .singleElement()
        .asString()
        .contains("changed since this page was opened");
  }

  @Test
  void answers_that_are_too_old_are_to_be_asked_again() {
    world.pass(Duration.ofDays(400));

    ScreeningView view = view(screened);

    assertThat(view.answer()).isEqualTo("Answers are older than 12 months: ask what is still true");
    assertThat(view.verdicts())
        .singleElement()
        .satisfies(
            verdict -> {
              assertThat(verdict.guardClass()).isEqualTo(GuardClass.HOLD);
              assertThat(verdict.sentence()).isEqualTo("The oldest answer is of 2 March 2026.");
            });
  }

  @Test
  void the_hours_after_a_pde5_inhibitor_are_the_clinics_own() {
    assertThat(question(view(screened), Condition.PDE5_INHIBITOR).clinicRule())
        .isEqualTo("The clinic's own hours between the two: 72 h; no published figure.");
    assertThat(question(view(screened), Condition.TRAZODONE).clinicRule()).isEmpty();
  }

  @Test
  void scarring_at_an_examination_counts_before_anybody_has_asked() {
    examine(unscreened, Answer.YES, "on the left");

    ScreeningView view = view(unscreened);

    assertThat(view.answer()).startsWith("Contraindicated: curvature");
    assertThat(view.examination().last())
        .isEqualTo("2 March 2026, curvature or scarring: yes. on the left. Dr. Example.");
  }

  @Test
  void no_to_the_rest_of_a_group_leaves_what_has_an_answer_and_the_other_groups() {
    examine(unscreened, Answer.YES, "");
    var draft =
        new ScreeningDraft(
            Map.of(Condition.VENOUS_LEAK.name(), "yes"),
            /* stillTrue= */ false,
            Set.of(Topic.PENIS),
            Optional.empty());

    answer(unscreened, draft).orThrow();

    ScreeningView view = view(unscreened);
    assertThat(question(view, Condition.CURVATURE_OR_SCARRING).answer()).isEmpty();
    assertThat(question(view, Condition.CURVATURE_OR_SCARRING).counts())
        .startsWith("Counts as yes: found at the examination of 2 March 2026.");
    assertThat(question(view, Condition.VENOUS_LEAK).answer()).isEqualTo("yes");
    assertThat(question(view, Condition.PENILE_IMPLANT).answer()).isEqualTo("no");
    assertThat(question(view, Condition.SICKLE_CELL).answer()).isEmpty();
  }

  @Test
  void a_form_that_does_not_show_the_last_examination_is_refused() {
    long shown = view(screened).basis();
    var stale =
        new ScreeningDraft(
            Map.of(Condition.CURVATURE_OR_SCARRING.name(), "no"),
            /* stillTrue= */ true,
            Set.of(),
            Optional.of(shown));
    examine(screened, Answer.YES, "");

    Reading<Long> outcome = answer(screened, stale);

    assertThat(outcome.faults())
        .singleElement()
        .asString()
        .contains("changed since this page was opened");
    assertThat(view(screened).answer()).startsWith("Contraindicated: curvature");
  }

  @Test
  void saying_that_all_is_still_true_does_not_undo_an_examination() {
    examine(screened, Answer.YES, "");
    world.pass(Duration.ofDays(1));

    answer(screened, ScreeningForm.stillTrue()).orThrow();

    assertThat(view(screened).answer()).startsWith("Contraindicated: curvature");
  }

  @Test
  void a_man_who_cannot_do_it_himself_needs_his_partner_or_a_device() {
    baseline("not_enough", "himself");
    assertThat(view(screened).baseline().orElseThrow().help()).contains("use a device");
    assertThat(view(screened).baseline().orElseThrow().words()).startsWith("Score 9 (moderate)");

    baseline("not_enough", "partner");
    assertThat(view(screened).baseline().orElseThrow().help()).isEmpty();
  }

  private void baseline(String hands, String injector) {
    world
        .screenings()
        .baseline(Staff.EDUCATOR, screened, new BaselineDraft("9", hands, "good", injector))
        .orThrow();
  }
}
