package rungwise.clinic.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeCodeTest {

  private static final byte[] KEY = "12345678901234567890".getBytes(StandardCharsets.US_ASCII);
  private static final int DIGITS_OF_THE_TABLE = 8;

  /** RFC 6238, appendix B: the rows with SHA-1, seconds since 1970 and codes of 8 digits. */
  @ParameterizedTest
  @CsvSource({
    "59, 94287082",
    "1111111109, 07081804",
    "1111111111, 14050471",
    "1234567890, 89005924",
    "2000000000, 69279037",
    "20000000000, 65353130"
  })
  void the_codes_are_those_of_rfc_6238(long seconds, String code) {
    long step = TimeCode.stepAt(Instant.ofEpochSecond(seconds));

    assertThat(TimeCode.of(KEY, step, DIGITS_OF_THE_TABLE)).isEqualTo(code);
    assertThat(TimeCode.at(FactorSecret.of(KEY), step)).isEqualTo(code.substring(2));
  }

  /** RFC 4226, appendix D: codes of 6 digits by counter. */
  @ParameterizedTest
  @CsvSource({
    "0, 755224", "1, 287082", "2, 359152", "3, 969429", "4, 338314",
    "5, 254676", "6, 287922", "7, 162583", "8, 399871", "9, 520489"
  })
  void the_codes_of_six_digits_are_those_of_rfc_4226(long counter, String code) {
    assertThat(TimeCode.of(KEY, counter, TimeCode.DIGITS)).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "29, 0", "30, 1", "59, 1", "60, 2"})
  void a_step_begins_every_30_seconds(long seconds, long step) {
    assertThat(TimeCode.stepAt(Instant.ofEpochSecond(seconds))).isEqualTo(step);
  }
}
