package rungwise.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TypedTest {

  @Test
  void an_absent_field_is_empty_and_a_ticked_list_is_whole() {
    var typed = new Typed(Map.of("wrong", List.of("LEAK", "BUBBLE"), "none", List.of()));

    assertThat(typed.text("mark")).isEmpty();
    assertThat(typed.text("none")).isEmpty();
    assertThat(typed.all("wrong")).containsExactly("LEAK", "BUBBLE");
    assertThat(typed.has("wrong", "LEAK")).isTrue();
    assertThat(typed.has("wrong", "BENT_NEEDLE")).isFalse();
  }

  @Test
  void filling_a_field_replaces_what_was_in_it_and_nothing_else() {
    Typed typed = Typed.NOTHING.with("mark", "20").with("date", "2026-03-02").with("mark", "25");

    assertThat(typed.text("mark")).isEqualTo("25");
    assertThat(typed.text("date")).isEqualTo("2026-03-02");
  }
}
