package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

final class JsonObjectTest {

  @Test
  void members_keep_their_order_and_kind() {
    JsonObject object =
        JsonObject.empty()
            .with("text", "0.2 mL")
            .with("number", 0.2)
            .with("answer", true)
            .withNothing("unknown")
            .with("inner", JsonObject.empty().with("one", 1))
            .withObjects("objects", List.of(JsonObject.empty(), JsonObject.empty().with("a", 2)))
            .withTexts("texts", List.of("a", "b"));

    assertThat(object)
        .hasToString(
            "{\"text\":\"0.2 mL\",\"number\":0.2,\"answer\":true,\"unknown\":null,"
                + "\"inner\":{\"one\":1},\"objects\":[{},{\"a\":2}],\"texts\":[\"a\",\"b\"]}");
  }

  @Test
  void numbers_keep_all_their_digits_and_no_power_of_ten() {
    JsonObject object =
        JsonObject.empty()
            .with("third", 1.0 / 3)
            .with("whole", 20.0)
            .with("hundred", 100.0)
            .with("small", 0.0000125)
            .with("zero", -0.0)
            .with("negative", -1.5);

    assertThat(object)
        .hasToString(
            "{\"third\":0.3333333333333333,\"whole\":20,\"hundred\":100,\"small\":0.0000125,"
                + "\"zero\":0,\"negative\":-1.5}");
  }

  @Test
  void text_cannot_end_its_own_quotation() {
    JsonObject object = JsonObject.empty().with("a\"b", "\"\\\n\u0001\uD800\u00E9\uD83D\uDE00");

    assertThat(object)
        .hasToString("{\"a\\\"b\":\"\\\"\\\\\\u000a\\u0001\\ud800\u00E9\uD83D\uDE00\"}");
  }

  @Test
  void what_is_no_number_is_a_fault_of_the_program() {
    assertThatThrownBy(() -> JsonObject.empty().with("mean", Double.NaN))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("bug: mean is NaN");
    assertThatThrownBy(() -> JsonObject.empty().with("mean", Double.POSITIVE_INFINITY))
        .hasMessageStartingWith("bug:");
  }
}
