package rungwise.web.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrailFileTest {

  private static String line(String reason) {
    var row = new TrailRow(7, "at", "who", "what", "", List.of(), "", reason);
    return new TrailFile(List.of(row)).text().lines().toList().get(1);
  }

  @Test
  void quotes_and_commas_stay_in_their_cell() {
    assertThat(line("he said \"no\", twice"))
        .isEqualTo("\"7\",\"at\",\"who\",\"what\",\"\",\"\",\"he said \"\"no\"\", twice\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@x", "\tx"})
  void no_cell_begins_a_formula(String text) {
    assertThat(line(text)).endsWith(",\"'" + text + "\"");
  }
}
