package rungwise.files.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Plain numbers against the decimal arithmetic of the library, whose double is the nearest. */
final class PlainNumberTest {

  private static final long SEED = 20261127;
  private static final int TRIES = 200_000;
  private static final Pattern DECIMAL = Pattern.compile("[0-9]{1,9}(?:\\.[0-9]{1,20})?");
  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

  private static double decimal(String text) {
    byte[] bytes = ("x" + text + "9").getBytes(StandardCharsets.ISO_8859_1);
    return PlainNumber.decimal(bytes, 1, bytes.length - 1);
  }

  private static int whole(String text) {
    byte[] bytes = ("1" + text + ".").getBytes(StandardCharsets.ISO_8859_1);
    return PlainNumber.whole(bytes, 1, bytes.length - 1);
  }

  private static String random(Random random) {
    var text = new StringBuilder();
    String signs = random.nextInt(3) > 0 ? "0123456789" : "0123456789..-+eE ,";
    int before = random.nextInt(11);
    for (int i = 0; i < before; i++) {
      text.append(signs.charAt(random.nextInt(signs.length())));
    }
    if (random.nextBoolean()) {
      text.append('.');
      int after = random.nextInt(22);
      for (int i = 0; i < after; i++) {
        text.append(signs.charAt(random.nextInt(signs.length())));
      }
    }
    return text.toString();
  }

  @Test
  void a_decimal_number_is_the_double_next_to_it() {
    var random = new Random(SEED);
    int accepted = 0;
    for (int attempt = 0; attempt < TRIES; attempt++) {
      String text = random(random);
      boolean isDecimal = DECIMAL.matcher(text).matches();
      double expected = isDecimal ? new BigDecimal(text).doubleValue() : Double.NaN;

      assertThat(Double.valueOf(decimal(text))).as(text).isEqualTo(Double.valueOf(expected));
      accepted += isDecimal ? 1 : 0;
    }
    assertThat(accepted).isBetween(TRIES / 4, TRIES);
  }

  @Test
  void a_whole_number_has_one_to_nine_digits_and_nothing_else() {
    var random = new Random(SEED);
    for (int attempt = 0; attempt < TRIES; attempt++) {
      String text = random(random);
      int expected = WHOLE.matcher(text).matches() ? Integer.parseInt(text) : -1;

      assertThat(whole(text)).as(text).isEqualTo(expected);
    }
  }
}
