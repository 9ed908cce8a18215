package rungwise.clinic.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a telephone dials. The numbers are those that the United Kingdom's regulator (Ofcom) and the
 * North American plan (555-0100 to 555-0199) keep for invented people; from memory.
 */
final class TelephoneTest {

  private static Telephone telephone(String text) {
    return new Telephone(text, Telephone.Whose.HIS, Optional.empty(), Telephone.Message.NONE);
  }

  @ParameterizedTest
  @CsvSource({
    "07700 900123, 07700900123",
    "+44 7700 900123, +447700900123",
    "(212) 555-0123, 2125550123",
    "212.555.0123, 2125550123",
    "\u0660\u0667\u0667\u0660\u0660 900123, 07700900123",
  })
  void a_number_with_nothing_but_digits_is_dialled(String text, String dialled) {
    assertThat(telephone(text).dialled()).contains(dialled);
  }

  /** The extension would be dialled as part of it, and the digit in brackets by some alone. */
  @ParameterizedTest
  @ValueSource(
      strings = {"0161 496 0000 ext. 12", "+44 (0)7700 900123", "07700 900123 or 456", "1;2,345#"})
  void one_that_leaves_it_open_is_dialled_by_hand(String text) {
    assertThat(telephone(text).dialled()).isEmpty();
  }

  @Test
  void what_holds_fewer_than_three_digits_is_no_number() {
    assertThat(Telephone.read("12").found()).isEmpty();
    assertThat(Telephone.read("999").found()).contains("999");
  }
}
