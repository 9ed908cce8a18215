package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SignInNameTest {

  @ParameterizedTest
  @ValueSource(
      strings = {"ana", "ana.ruiz", "a-1", "...", "0123456789012345678901234567890123456789"})
  void lower_case_letters_digits_dots_and_dashes_are_accepted(String text) {
    assertThat(SignInName.parse(text).found()).contains(new SignInName(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "an",
        "01234567890123456789012345678901234567890",
        "Ana",
        "ana ruiz",
        "ana_ruiz",
        "an\u00e1",
        "ana\n",
        " ana"
      })
  void anything_else_is_refused_with_an_example(String text) {
    assertThat(SignInName.parse(text).faults()).hasSize(1).first().asString().contains("ana.ruiz");
  }
}
