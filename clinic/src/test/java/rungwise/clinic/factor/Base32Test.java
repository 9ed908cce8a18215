package rungwise.clinic.factor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.clinic.people.SignInName;

class Base32Test {

  /** RFC 4648, section 10, without the padding. */
  @ParameterizedTest
  @CsvSource({
    "'', ''",
    "f, MY",
    "fo, MZXQ",
    "foo, MZXW6",
    "foob, MZXW6YQ",
    "fooba, MZXW6YTB",
    "foobar, MZXW6YTBOI"
  })
  void the_texts_are_those_of_rfc_4648_both_ways(String bytes, String text) {
    assertThat(Base32.write(bytes.getBytes(StandardCharsets.US_ASCII))).isEqualTo(text);
    assertThat(new String(Base32.read(text), StandardCharsets.US_ASCII)).isEqualTo(bytes);
  }

  @Test
  void leading_zero_bytes_are_kept() {
    byte[] bytes = {0, 0, 0, 1, (byte) 0xff};

    assertThat(Base32.read(Base32.write(bytes))).isEqualTo(bytes);
  }

  @Test
  void another_symbol_or_length_is_refused() {
    assertThatThrownBy(() -> Base32.read("MZXW1")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new FactorSecret("MZXW6YTB"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void the_address_for_an_app_holds_clinic_name_and_secret() {
    var secret = new FactorSecret("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ");

    assertThat(secret.address("Harbour Lane & Co", new SignInName("ana.ruiz")))
        .isEqualTo(
            "otpauth://totp/Harbour%20Lane%20%26%20Co:ana.ruiz"
                + "?secret=GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ&issuer=Harbour%20Lane%20%26%20Co");
    assertThat(secret.grouped()).isEqualTo("GEZD GNBV GY3T QOJQ GEZD GNBV GY3T QOJQ");
    assertThat(secret).hasToString("FactorSecret");
  }
}
