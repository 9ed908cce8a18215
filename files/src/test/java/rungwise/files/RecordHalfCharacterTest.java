package rungwise.files;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.record.RecordFault;
import rungwise.files.record.RecordFileReader;

/** A record file whose bytes are no text. RFC 8259, 8.2, says that half a character is none. */
final class RecordHalfCharacterTest {

  private static final String HEADER =
      "{\"form\":\"rungwise-record\",\"version\":1,\"scope\":\"record\",\"entries\":[\n";

  private static void readAll(byte[] bytes) {
    try (var in = new RecordFileReader(new ByteArrayInputStream(bytes))) {
      while (in.hasNext()) {
        in.next();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"number\":1,\"id\":\"\\uD800\"}]}",
        "{\"number\":1,\"\\uDC00\":\"a\"}]}",
        "{\"facts\":[{\"\\uD83D\":{}}]}]}",
        "{\"facts\":[{\"a\":{\"\\uD83D\":1}}]}]}",
        "{\"facts\":[{\"screened \u00f7\u00ac\u00a4\u00a4 \":{}}]}]}",
        "{\"facts\":[{\"a\":{\"screened \u00f7\u00ac\u00a4\u00a4\":1}}]}]}"
      })
  void half_a_character_is_refused_with_its_line(String entry) {
    assertThatThrownBy(() -> readAll((HEADER + entry).getBytes(StandardCharsets.ISO_8859_1)))
        .isInstanceOf(RecordFault.class)
        .hasMessageMatching("(?s)line 2: .*(half a character|surrogate).*");
  }

  @Test
  void bytes_of_no_known_encoding_are_a_fault_of_the_first_line() {
    assertThatThrownBy(() -> readAll(new byte[] {0, 0, '{', 0}))
        .isInstanceOf(RecordFault.class)
        .hasMessageStartingWith("line 1: this is not sound JSON: ");
  }
}
