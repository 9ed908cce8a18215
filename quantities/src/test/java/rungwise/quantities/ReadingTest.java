package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ReadingTest {

  @Test
  void mapping_a_value_keeps_its_notices() {
    Reading<Integer> reading = new Reading.Read<>(2, List.of("read as 2"));

    assertThat(reading.map(number -> number * 2))
        .isEqualTo(new Reading.Read<>(4, List.of("read as 2")));
  }

  @Test
  void mapping_a_refusal_keeps_every_fault_and_does_not_ask_for_a_value() {
    Reading<Integer> reading = new Reading.Refused<>(List.of("first", "second"));

    Reading<Integer> mapped =
        reading.map(
            number -> {
              throw new AssertionError("there is no value to change: " + number);
            });

    assertThat(mapped.faults()).containsExactly("first", "second");
    assertThat(mapped.found()).isEmpty();
    assertThat(mapped.notices()).isEmpty();
  }

  @Test
  void a_value_has_no_faults() {
    Reading<String> reading = Reading.of("read");

    assertThat(reading.found()).contains("read");
    assertThat(reading.faults()).isEmpty();
    assertThat(reading.notices()).isEmpty();
    assertThat(reading.orThrow()).isEqualTo("read");
  }

  @Test
  void a_refusal_must_name_a_fault() {
    assertThatThrownBy(() -> new Reading.Refused<String>(List.<Fault>of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
  }

  @Test
  void insisting_on_a_refused_value_is_a_fault_of_the_program() {
    Reading<String> reading = Reading.refused("no number");

    assertThatThrownBy(reading::orThrow)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("bug: [no number]");
  }

  @Test
  void later_changes_of_the_given_list_do_not_reach_a_reading() {
    var faults = new ArrayList<>(List.of("first"));
    Reading<String> reading = new Reading.Refused<>(faults);

    faults.clear();

    assertThat(reading.faults()).containsExactly("first");
  }
}
