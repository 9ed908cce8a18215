package rungwise.web.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.web.page.Typed;

class VisitFormTest {

  @Test
  void nobody_counts_as_injected_already_unless_it_was_ticked() {
    assertThat(new VisitForm(Typed.NOTHING).start().alreadyGiven()).isFalse();
    assertThat(new VisitForm(Typed.NOTHING.with("startGiven", "no")).start().alreadyGiven())
        .isFalse();
    assertThat(new VisitForm(Typed.NOTHING.with("startGiven", "yes")).start().alreadyGiven())
        .isTrue();
  }

  @Test
  void how_it_ended_must_be_said_and_left_is_not_soft() {
    assertThat(new VisitForm(Typed.NOTHING).saysHow()).isFalse();
    assertThat(new VisitForm(Typed.NOTHING.with("endHow", "asleep")).saysHow()).isFalse();
    VisitForm soft = new VisitForm(Typed.NOTHING.with("endHow", "soft"));
    VisitForm left = new VisitForm(Typed.NOTHING.with("endHow", "left"));

    assertThat(soft.saysHow()).isTrue();
    assertThat(soft.end().left()).isFalse();
    assertThat(left.saysHow()).isTrue();
    assertThat(left.end().left()).isTrue();
  }

  @Test
  void a_form_reads_its_own_fields_only() {
    var form =
        new VisitForm(
            new Typed(
                Map.of(
                    "noteTime", List.of("10:10"),
                    "endTime", List.of("11:05"),
                    "endWrong", List.of("LEAK", "BUBBLE"))));

    assertThat(form.note().time()).isEqualTo("10:10");
    assertThat(form.end().time()).isEqualTo("11:05");
    assertThat(form.end().whatWentWrong()).isEqualTo(Set.of("LEAK", "BUBBLE"));
    assertThat(form.start().time()).isEmpty();
  }

  @Test
  void what_was_sent_stays_over_what_the_page_shows_at_first() {
    var shown = new VisitForm(Typed.NOTHING.with("noteTime", "10:00").with("endTime", "10:00"));
    var sent = new VisitForm(Typed.NOTHING.with("noteTime", "9 pm"));

    assertThat(sent.over(shown).note().time()).isEqualTo("9 pm");
    assertThat(sent.over(shown).end().time()).isEqualTo("10:00");
  }
}
