package rungwise.web.screening;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.screening.ScreeningDraft;
import rungwise.clinic.screening.Screenings;
import rungwise.clinic.standing.CourseChanges;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Topic;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;

class ScreeningFormsTest {

  @Test
  void only_what_was_answered_is_handed_on() {
    var forms =
        new ScreeningForms(
            Map.of(
                "answer-SICKLE_CELL", "no",
                "answer-NOTHING_OF_THE_KIND", "yes",
                "rest-HEART", "no",
                "stillTrue", "yes",
                "basis", "17"));

    assertThat(forms.answers())
        .isEqualTo(
            new ScreeningDraft(
                Map.of("SICKLE_CELL", "no"), true, Set.of(Topic.HEART), Optional.of(17L)));
  }

  @Test
  void a_basis_that_is_no_number_is_none() {
    assertThat(new ScreeningForms(Map.of("basis", "17a")).answers().basis()).isEmpty();
    assertThat(ScreeningForms.EMPTY.answers().basis()).isEmpty();
  }

  @Test
  void faults_of_a_wrong_yes_stand_at_the_fields_of_its_condition() {
    var refused =
        new Reading.Refused<Long>(
            List.of(
                new Fault(Screenings.SHOWN_BY, "Choose what shows it."),
                new Fault(CourseChanges.REASON, "Write the reason."),
                Fault.ofForm("Open the page again.")));

    Faults faults = ScreeningForms.wrongs(refused, "SICKLE_CELL");

    assertThat(faults.of("shownBy-SICKLE_CELL")).isEqualTo("Choose what shows it.");
    assertThat(faults.of("wrong-SICKLE_CELL")).isEqualTo("Write the reason.");
    assertThat(faults.of("")).isEqualTo("Open the page again.");
  }

  @Test
  void the_baseline_shows_what_is_on_record_until_something_is_typed() {
    var onRecord =
        new Baseline(
            ErectileScore.of(9),
            Baseline.Ability.GOOD,
            Baseline.Ability.LIMITED,
            Baseline.Injector.PARTNER);
    var untouched = new ScreeningChoices(ScreeningForms.EMPTY, Faults.NONE);
    var typed =
        new ScreeningChoices(
            new ScreeningForms(Map.of("score", "30", "sight", "good")), Faults.NONE);

    assertThat(untouched.baseline(Optional.of(onRecord)).score().value()).isEqualTo("9");
    assertThat(picked(untouched.baseline(Optional.of(onRecord)).sight().options()))
        .containsExactly("limited");
    assertThat(typed.baseline(Optional.of(onRecord)).score().value()).isEqualTo("30");
    assertThat(picked(typed.baseline(Optional.of(onRecord)).sight().options()))
        .containsExactly("good");
  }

  private static List<String> picked(List<Option> options) {
    return options.stream().filter(Option::picked).map(Option::value).toList();
  }
}
