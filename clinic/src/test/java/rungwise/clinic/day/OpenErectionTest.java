package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Whether a man who left while it was firm still waits for somebody who takes him over. */
final class OpenErectionTest {

  private static OpenErection in(OpenErection.Where where) {
    return new OpenErection(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        where,
        /* isWithdrawn= */ false,
        /* isSaid= */ false,
        Optional.empty(),
        new OpenErection.Way.Review());
  }

  @Test
  void whoever_left_the_clinic_and_was_handed_to_nobody_is_left_and_nobody_else_is() {
    assertThat(OpenErection.Where.values())
        .filteredOn(where -> in(where).isLeft())
        .containsExactly(OpenErection.Where.LEFT_THE_CLINIC);
  }
}
