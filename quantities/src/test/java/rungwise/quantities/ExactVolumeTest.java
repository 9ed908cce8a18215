package rungwise.quantities;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ExactVolumeTest {

  private static final long SEED = 20_260_104;
  private static final int CASES = 50_000;

  /** Volumes for wanted contents, worked out by hand from published label tables. */
  @ParameterizedTest
  @CsvSource({
    "1.25 mcg, 20 mcg/mL, 0.0625 mL, 60",
    "2.5 mcg, 20 mcg/mL, 0.125 mL, 120",
    "5 mcg, 20 mcg/mL, 0.25 mL, 250",
    "5 mcg, 40 mcg/mL, 0.125 mL, 120",
    "15 mcg, 40 mcg/mL, 0.375 mL, 370",
    "10 mcg, 10 mcg/mL, 1 mL, 1000",
    "1 mcg, 3 mcg/mL, about 0.333333 mL, 330",
    "0 mcg, 3 mcg/mL, 0 mL, 0",
  })
  void a_wanted_content_becomes_a_mark_only_by_rounding_down(
      String content, String strength, String exact, long microlitres) {
    Mass wanted = content.equals("0 mcg") ? Mass.ofPicograms(0) : Mass.parse(content).orThrow();

    ExactVolume volume = Concentration.parse(strength).orThrow().volumeOf(wanted);

    assertThat(volume).hasToString(exact);
    assertThat(volume.roundDownTo(Volume.ofMicrolitres(10)))
        .isEqualTo(Volume.ofMicrolitres(microlitres));
  }

  @Test
  void rounding_down_never_gives_more_and_never_a_whole_step_less() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      var wanted = Mass.ofPicograms(random.nextLong(1_000_000_000_000L));
      var strength = new Concentration(1 + random.nextLong(1_000_000_000));
      var step = Volume.ofMicrolitres(1 + random.nextLong(100));

      Volume rounded = strength.volumeOf(wanted).roundDownTo(step);

      assertThat(rounded.isMultipleOf(step)).isTrue();
      assertThat(strength.in(rounded).isMoreThan(wanted)).isFalse();
      assertThat(strength.in(rounded.plus(step)).isMoreThan(wanted)).isTrue();
    }
  }

  @Test
  void rounding_down_agrees_with_whole_number_division_of_any_size() {
    var random = new Random(SEED);

    for (int i = 0; i < CASES; i++) {
      long picograms = random.nextLong() >>> 1;
      long perMicrolitre = 1 + (random.nextLong() >>> (1 + random.nextInt(60)));
      long step = 1 + random.nextLong(1000);
      if (perMicrolitre > 0) {
        BigInteger steps =
            BigInteger.valueOf(picograms)
                .divide(BigInteger.valueOf(perMicrolitre).multiply(BigInteger.valueOf(step)));

        Volume rounded =
            new ExactVolume(picograms, perMicrolitre).roundDownTo(Volume.ofMicrolitres(step));

        assertThat(BigInteger.valueOf(rounded.microlitres()))
            .isEqualTo(steps.multiply(BigInteger.valueOf(step)));
      }
    }
  }

  @Test
  void only_the_very_same_volume_is_exact() {
    var exact = new ExactVolume(400, 2);
    var between = new ExactVolume(401, 2);

    assertThat(exact.isExactly(Volume.ofMicrolitres(200))).isTrue();
    assertThat(exact.isExactly(Volume.ofMicrolitres(201))).isFalse();
    assertThat(between.isExactly(Volume.ofMicrolitres(200))).isFalse();
    assertThat(between.isExactly(Volume.ofMicrolitres(201))).isFalse();
    assertThat(new ExactVolume(0, 7).isExactly(Volume.ZERO)).isTrue();
    assertThat(new ExactVolume(1, Long.MAX_VALUE).isExactly(Volume.ofMicrolitres(2))).isFalse();
  }

  @Test
  void equal_fractions_are_equal_volumes() {
    var third = new ExactVolume(1, 3);
    var sameThird = new ExactVolume(10, 30);
    var more = new ExactVolume(34, 100);

    assertThat(third).isEqualTo(sameThird).hasSameHashCodeAs(sameThird);
    assertThat(third).isEqualByComparingTo(sameThird).isLessThan(more);
    assertThat(new ExactVolume(1, Long.MAX_VALUE))
        .isLessThan(new ExactVolume(2, Long.MAX_VALUE))
        .isLessThan(new ExactVolume(1, Long.MAX_VALUE - 1));
    assertThat(third.ratioTo(Volume.ofMicrolitres(1))).isEqualTo(1.0 / 3);
  }

  /** Against the products as whole numbers of any length, up to the largest that a volume holds. */
  @Test
  void the_order_is_that_of_the_fractions_whatever_their_size() {
    var random = new Random(SEED);
    for (int i = 0; i < CASES; i++) {
      int bits = 1 + random.nextInt(Long.SIZE - 1);
      long a = random.nextLong() >>> (Long.SIZE - bits);
      long b = Math.max(1, random.nextLong() >>> (Long.SIZE - bits));
      long c = random.nextInt(4) == 0 ? a : random.nextLong() >>> 1;
      long d = random.nextInt(4) == 0 ? Math.max(1, b - 1) : Math.max(1, random.nextLong() >>> 1);
      int expected =
          BigInteger.valueOf(a)
              .multiply(BigInteger.valueOf(d))
              .compareTo(BigInteger.valueOf(c).multiply(BigInteger.valueOf(b)));

      var one = new ExactVolume(a, b);
      var other = new ExactVolume(c, d);

      assertThat(one.compareTo(other)).as("%d/%d and %d/%d", a, b, c, d).isEqualTo(expected);
      assertThat(one.equals(other)).isEqualTo(expected == 0);
    }
  }

  @Test
  void a_step_of_zero_and_a_fraction_without_meaning_are_faults_of_the_program() {
    var half = new ExactVolume(1, 2);

    assertThatThrownBy(() -> half.roundDownTo(Volume.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> half.ratioTo(Volume.ZERO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new ExactVolume(-1, 2)).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new ExactVolume(1, 0)).hasMessageStartingWith("bug:");
  }
}
