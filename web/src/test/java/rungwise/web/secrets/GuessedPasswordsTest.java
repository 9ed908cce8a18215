package rungwise.web.secrets;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import me.gosimple.nbvcxz.resources.DictionaryUtil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class GuessedPasswordsTest {

  private static final Set<String> NAMES =
      Set.of("ines", "Ines Halloran", "Harbour Lane Clinic (invented)");

  private final GuessedPasswords guessed = new GuessedPasswords();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "passwordpassword",
        "PasswordPassword",
        "Password1234!",
        "!!!Welcome2026",
        "123456789012",
        "1qaz2wsx3edc",
        "qwertyuiopasdf",
        "aaaaaaaaaaaa",
        "P@ssw0rd2026",
        "ines halloran",
        "Ines.Halloran1",
        "harbourlane1",
        "HarbourLane2026",
        "halloraninesines"
      })
  void what_is_tried_first_is_guessed(String password) {
    assertThat(guessed.test(password, NAMES)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "paper-boat-under-lantern",
        "seven-green-garden-gates",
        "seven quiet green lamps",
        "other quiet words here",
        "kwpfhzmtbvxd",
        "harbourlane-wide-kettle-moss-41"
      })
  void words_in_a_row_that_nobody_would_guess_are_not(String password) {
    assertThat(guessed.test(password, NAMES)).isFalse();
  }

  @Test
  void all_of_the_hundred_thousand_most_common_that_are_long_enough_are_guessed() {
    Map<String, Integer> list = DictionaryUtil.loadRankedDictionary(DictionaryUtil.passwords);
    assertThat(list).hasSizeGreaterThan(95_000);

    assertThat(list.keySet().stream().filter(one -> one.length() >= 12))
        .hasSizeGreaterThan(450)
        .allMatch(one -> guessed.test(one, Set.of()));
  }

  @Test
  void the_longest_password_is_judged_within_two_seconds() {
    guessed.test("the lists are read before the first", NAMES);
    long start = System.nanoTime();
    guessed.test("a1B2-password".repeat(9) + "qwertyuiopa", NAMES);

    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
  }
}
