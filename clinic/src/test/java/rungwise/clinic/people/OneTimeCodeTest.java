package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import org.junit.jupiter.api.Test;

final class OneTimeCodeTest {

  private static byte[] bytes(int... values) {
    var bytes = new byte[OneTimeCode.BYTES];
    for (int at = 0; at < values.length; at++) {
      bytes[at] = (byte) values[at];
    }
    return bytes;
  }

  @Test
  void ten_bytes_make_sixteen_symbols_in_groups_of_four() {
    assertThat(OneTimeCode.of(bytes()).text()).isEqualTo("0000-0000-0000-0000");
    assertThat(OneTimeCode.of(bytes(0xff, 0xff, 0xff, 0xff, 0xff)).text())
        .isEqualTo("ZZZZ-ZZZZ-0000-0000");
    assertThat(OneTimeCode.of(bytes(0b00001000, 0b10000110, 0b01000000)).text())
        .isEqualTo("1234-0000-0000-0000");
  }

  @Test
  void every_bit_counts() {
    var codes = new HashSet<String>();
    for (int bit = 0; bit < OneTimeCode.BYTES * Byte.SIZE; bit++) {
      byte[] one = bytes();
      one[bit / Byte.SIZE] = (byte) (1 << (bit % Byte.SIZE));
      codes.add(OneTimeCode.of(one).text());
    }

    assertThat(codes).hasSize(OneTimeCode.BYTES * Byte.SIZE);
  }

  @Test
  void another_number_of_bytes_is_refused() {
    assertThatThrownBy(() -> OneTimeCode.of(new byte[OneTimeCode.BYTES - 1]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void typing_may_differ_in_case_spaces_dashes_and_look_alikes() {
    assertThat(OneTimeCode.normal("o0il-zzzz zzzzzzzz")).isEqualTo("0011-ZZZZ-ZZZZ-ZZZZ");
    assertThat(OneTimeCode.normal("0011")).isEmpty();
    assertThat(OneTimeCode.normal("")).isEmpty();
  }
}
