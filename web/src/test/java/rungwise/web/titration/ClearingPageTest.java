package rungwise.web.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.GuardRule;
import rungwise.web.page.VerdictLine.Way;

class ClearingPageTest {

  @Test
  void a_page_is_named_only_where_something_can_be_written_that_clears_the_rule() {
    assertThat(
            Arrays.stream(GuardRule.values())
                .filter(rule -> ClearingPage.of(rule).isPresent())
                .map(GuardRule::clears))
        .isNotEmpty()
        .doesNotContain(new Clears.Never());
  }

  @Test
  void open_questions_of_the_screening_lead_to_the_screening() {
    GuardRule rule = GuardRule.SCREENING_OPEN;
    var verdict =
        new VerdictText(rule, rule.guardClass(), rule.wording(), "", List.of(), "the label");

    assertThat(CourseWords.line(verdict, "/courses/7").way())
        .isEqualTo(Optional.of(new Way("/courses/7/screening", "Open the screening")));
    assertThat(CourseWords.line(verdict).way()).isEmpty();
  }
}
