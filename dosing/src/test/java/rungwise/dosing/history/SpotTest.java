package rungwise.dosing.history;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 10, 2 and away from 6: Albaugh 2006. 9 and 3: common practice, no source. 12: from memory. */
final class SpotTest {

  @ParameterizedTest
  @CsvSource({
    "1, BESIDE_NERVES",
    "2, RIGHT",
    "3, RIGHT",
    "4, NOT_ALLOWED",
    "5, NOT_ALLOWED",
    "6, NOT_ALLOWED",
    "7, NOT_ALLOWED",
    "8, NOT_ALLOWED",
    "9, RIGHT",
    "10, RIGHT",
    "11, BESIDE_NERVES",
    "12, NOT_ALLOWED"
  })
  void each_hour_is_right_or_beside_the_nerves_or_not_allowed(int hour, Spot.Standing standing) {
    assertThat(Spot.standing(hour)).isEqualTo(standing);
  }
}
