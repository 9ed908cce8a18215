package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class PasswordRuleTest {

  private static final String TALL_CHARACTER = "\ud834\udd1e";

  private final PasswordRule rule = new PasswordRule();

  @Test
  void from_12_to_128_characters_are_accepted_whatever_they_are() {
    assertThat(rule.faults("kwpfhzmtbvx", "ana.ruiz")).hasSize(1);
    assertThat(rule.faults("kwpfhzmtbvxd", "ana.ruiz")).isEmpty();
    assertThat(rule.faults("kz".repeat(64), "ana.ruiz")).isEmpty();
    assertThat(rule.faults("kz".repeat(64) + "k", "ana.ruiz")).hasSize(1);
    assertThat(rule.faults("nine small words here", "ana.ruiz")).isEmpty();
  }

  @Test
  void characters_are_counted_as_people_see_them() {
    assertThat(rule.faults(TALL_CHARACTER.repeat(11), "ana.ruiz")).hasSize(1);
    assertThat(rule.faults(TALL_CHARACTER.repeat(12), "ana.ruiz")).isEmpty();
    assertThat(rule.faults("e\u0301".repeat(12), "ana.ruiz")).isEmpty();
    assertThat(rule.faults("e\u0301".repeat(11), "ana.ruiz")).hasSize(1);
  }

  @Test
  void the_sign_in_name_is_no_password_in_any_case() {
    assertThat(rule.faults("anamaria.ruiz", "anamaria.ruiz")).hasSize(1);
    assertThat(rule.faults("AnaMaria.Ruiz", "anamaria.ruiz")).hasSize(1);
  }

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
        "Rungwise2026!"
      })
  void what_everybody_tries_first_is_refused(String password) {
    assertThat(rule.faults(password, "ana.ruiz")).hasSize(1).first().asString().contains("first");
  }

  @Test
  void a_common_word_inside_a_longer_password_is_no_fault() {
    assertThat(rule.faults("welcome lamps of quiet", "ana.ruiz")).isEmpty();
  }
}
