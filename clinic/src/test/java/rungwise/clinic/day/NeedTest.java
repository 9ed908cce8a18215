package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which need comes first; kept rows hold the ranks, so a rank never changes its meaning. */
final class NeedTest {

  @Test
  void every_need_has_a_rank_of_its_own_from_the_most_urgent_on() {
    assertThat(Need.values()).extracting(Need::rank).doesNotHaveDuplicates();
    assertThat(Need.EMERGENCY.rank()).isZero();
    assertThat(List.of(Need.values())).isSortedAccordingTo(Comparator.comparingInt(Need::rank));
    assertThat(Need.values()).allSatisfy(one -> assertThat(Need.ofRank(one.rank())).isEqualTo(one));
    assertThatThrownBy(() -> Need.ofRank(99))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("99");
  }

  @Test
  void only_a_man_who_needs_nothing_or_has_ended_waits_for_nobody() {
    assertThat(Need.values())
        .filteredOn(one -> !one.isWaiting())
        .containsExactlyInAnyOrder(Need.NOTHING, Need.ENDED);
  }

  @Test
  void an_emergency_one_that_is_firm_and_one_without_an_end_are_not_over() {
    assertThat(Need.values())
        .filteredOn(Need::isNotOver)
        .containsExactlyInAnyOrder(Need.EMERGENCY, Need.FIRM, Need.END_NOT_KNOWN);
  }

  @Test
  void the_words_say_what_its_time_is() {
    assertThat(Need.SIGNATURE.since("10:15")).isEqualTo("since 10:15");
    assertThat(Need.EMERGENCY.since("10:15")).isEqualTo("injected 10:15");
    assertThat(Need.NOTHING.since("10:15")).isEqualTo("last entry 10:15");
    assertThat(Need.values()).extracting(Need::words).doesNotHaveDuplicates().doesNotContain("");
  }
}
