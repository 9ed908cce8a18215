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

  private static SoftAfter exactly(long minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  private static SoftAfter between(long from, long before) {
    return new SoftAfter.Between(TimeSpan.ofMinutes(from), TimeSpan.ofMinutes(before));
  }

  @Test
  void an_end_lies_within_what_was_said_where_it_was_possible_by_it() {
    assertThat(exactly(100).isWithin(atLeast(90))).isTrue();
    assertThat(exactly(90).isWithin(atLeast(90))).isTrue();
    assertThat(exactly(89).isWithin(atLeast(90))).isFalse();
    assertThat(new SoftAfter.NotKnown().isWithin(atLeast(0))).isFalse();
    assertThat(atLeast(120).isWithin(atLeast(90))).isTrue();
    assertThat(atLeast(60).isWithin(atLeast(90))).isFalse();
    assertThat(exactly(45).isWithin(new SoftAfter.NotKnown())).isTrue();
    assertThat(atLeast(45).isWithin(new SoftAfter.NotKnown())).isTrue();
    assertThat(new SoftAfter.NotKnown().isWithin(atLeast(90))).isFalse();
    assertThat(new SoftAfter.NotKnown().isWithin(between(60, 120))).isFalse();
    assertThat(exactly(150).isWithin(exactly(150))).isTrue();
    assertThat(between(149, 151).isWithin(exactly(150))).isFalse();
  }

  @Test
  void the_later_end_of_an_interval_is_left_out() {
    assertThat(exactly(119).isWithin(between(60, 120))).isTrue();
    assertThat(exactly(120).isWithin(between(60, 120))).isFalse();
    assertThat(exactly(60).isWithin(between(60, 120))).isTrue();
    assertThat(exactly(59).isWithin(between(60, 120))).isFalse();
    assertThat(between(60, 120).isWithin(between(60, 120))).isTrue();
    assertThat(between(60, 121).isWithin(between(60, 120))).isFalse();
    assertThat(between(59, 120).isWithin(between(60, 120))).isFalse();
    assertThat(atLeast(60).isWithin(between(60, 120))).isFalse();
    assertThat(between(60, 240).isKnownBelow(TimeSpan.ofHours(4))).isTrue();
    assertThat(exactly(240).isKnownBelow(TimeSpan.ofHours(4))).isFalse();
  }
}
