package rungwise.dosing.history;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rungwise.quantities.TimeSpan;

/** What a duration says of the limit of four hours: US label, EU core safety profile. */
final class SoftAfterTest {

  private static SoftAfter atLeast(long minutes) {
    return new SoftAfter.AtLeast(TimeSpan.ofMinutes(minutes));
  }

  @Test
  void still_firm_at_half_an_hour_says_nothing_of_four_hours_yet() {
    assertThat(atLeast(30).saysEmergency()).isFalse();
    assertThat(atLeast(239).saysEmergency()).isFalse();
    assertThat(atLeast(240).saysEmergency()).isTrue();
  }

  @Test
  void yet_it_is_read_as_without_limit_until_somebody_has_asked() {
    assertThat(atLeast(30).mayReach(TimeSpan.ofHours(4))).isTrue();
  }

  @Test
  void a_known_end_says_what_it_says() {
    assertThat(new SoftAfter.Exactly(TimeSpan.ofMinutes(239)).saysEmergency()).isFalse();
    assertThat(new SoftAfter.Exactly(TimeSpan.ofMinutes(240)).saysEmergency()).isTrue();
    assertThat(
            new SoftAfter.Between(TimeSpan.ofMinutes(120), TimeSpan.ofMinutes(240)).saysEmergency())
        .isFalse();
    assertThat(
            new SoftAfter.Between(TimeSpan.ofMinutes(120), TimeSpan.ofMinutes(241)).saysEmergency())
        .isTrue();
    assertThat(new SoftAfter.NotKnown().saysEmergency()).isFalse();
  }
}
