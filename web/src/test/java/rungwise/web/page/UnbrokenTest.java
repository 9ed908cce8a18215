package rungwise.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.web.page.Unbroken.unbroken;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnbrokenTest {

  @ParameterizedTest
  @ValueSource(
      strings = {"0.2 mL", "30 mg", "10 mcg", "1,000 mg", "240 minutes", "2 days", "12 h", "50 %"})
  void a_number_stays_with_its_unit(String amount) {
    assertThat(unbroken("at " + amount + ", no more"))
        .isEqualTo("at " + amount.replace(' ', '\u00A0') + ", no more");
  }

  @Test
  void a_concentration_stays_in_one_piece() {
    assertThat(unbroken("alprostadil 10 mcg per mL"))
        .isEqualTo("alprostadil 10\u00A0mcg\u00A0per\u00A0mL");
  }

  @Test
  void a_mark_and_the_name_of_its_syringe_stay_in_one_piece() {
    assertThat(unbroken("20-unit mark on a U-100 syringe with half-unit lines"))
        .isEqualTo("20-\u2060unit mark on a U-\u2060100 syringe with half-\u2060unit lines");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"3 injections", "step 2 goes", "2 mixtures", "1 good", "well-known words"})
  void other_words_after_a_number_may_break(String text) {
    assertThat(unbroken(text)).isEqualTo(text);
  }
}
