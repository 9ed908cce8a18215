package rungwise.app.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every input that is kept is read soundly and at once. Millions more by one command: {@code
 * ./check fuzz}.
 */
final class CorpusTest {

  private static final int MOST_KEPT_BYTES = 100_000;

  @ParameterizedTest
  @EnumSource(Target.class)
  void every_kept_input_is_read_soundly_within_a_second(Target target) {
    var reader = new Timed(target.start());

    assertThat(target.corpus().size()).isGreaterThan(5);
    for (byte[] input : target.corpus()) {
      assertThatCode(() -> reader.read(input))
          .as(new String(input, StandardCharsets.UTF_8))
          .doesNotThrowAnyException();
    }
  }

  @ParameterizedTest
  @EnumSource(Target.class)
  void what_is_kept_is_small(Target target) {
    assertThat(target.corpus().stream().mapToInt(input -> input.length).sum())
        .isLessThan(MOST_KEPT_BYTES);
  }

  @Test
  void what_breaks_a_rule_is_seen() {
    Target.Reader slow = input -> sleep(Duration.ofMillis(1100));
    Target.Reader unsound = input -> Hold.that(input.length > 1, () -> "too short");

    assertThatThrownBy(() -> new Timed(slow).read(bytes("a"))).hasMessageContaining("took PT1.1");
    assertThatThrownBy(() -> new Timed(unsound).read(bytes("a"))).hasMessage("too short");
    new Timed(unsound).read(bytes("ab"));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void sleep(Duration time) {
    try {
      Thread.sleep(time);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
