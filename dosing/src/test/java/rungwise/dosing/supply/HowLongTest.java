package rungwise.dosing.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.Form;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** How many doses a vial gives, how long they last, and what a warm spell does by the rule. */
final class HowLongTest {

  private static final Random RANDOM = new Random(19);

  private static Volume microlitres(int least, int most) {
    return Volume.ofMicrolitres(RANDOM.nextInt(least, most));
  }

  @Test
  void a_larger_dose_never_leaves_more_doses() {
    for (int i = 0; i < 2000; i++) {
      Volume left = microlitres(0, 10_000);
      Volume holdUp = microlitres(0, 300);
      Volume dead = microlitres(0, 90);
      Volume purge = microlitres(0, 50);
      Volume dose = microlitres(10, 1000);
      var larger = new Draw(dose.plus(microlitres(1, 500)), dead, purge);
      var draw = new Draw(dose, dead, purge);

      assertThat(larger.dosesIn(left, holdUp)).isLessThanOrEqualTo(draw.dosesIn(left, holdUp));
      assertThat(draw.vialFor(draw.dosesIn(left, holdUp), holdUp).minus(holdUp))
          .isLessThanOrEqualTo(left);
    }
  }

  @Test
  void what_is_less_than_the_hold_up_gives_no_dose() {
    var draw = new Draw(Volume.ofMicrolitres(100), Volume.ZERO, Volume.ZERO);

    assertThat(draw.dosesIn(Volume.ofMicrolitres(100), Volume.ofMicrolitres(200))).isZero();
    assertThat(draw.dosesIn(Volume.ZERO, Volume.ZERO)).isZero();
  }

  @Test
  void a_limit_more_never_makes_the_last_day_later() {
    for (int i = 0; i < 2000; i++) {
      LocalDate made = LocalDate.of(2026, 1, 1).plusDays(RANDOM.nextInt(365));
      LocalDate label = made.plusDays(RANDOM.nextInt(1, 365));
      var closed = new VialDates(Optional.of(made), label, Optional.empty(), Optional.empty());
      var opened = closed.openBy(Opening.on(made.plusDays(RANDOM.nextInt(300))), ZoneOffset.UTC);
      var limited =
          new VialDates(
              Optional.of(made), label, opened.opened(), Optional.of(RANDOM.nextInt(1, 60)));
      var rule = new InUseRule.DaysAfterOpening(RANDOM.nextInt(1, 60));

      assertThat(end(opened, rule)).isBeforeOrEqualTo(end(closed, rule));
      assertThat(end(limited, rule)).isBeforeOrEqualTo(end(opened, rule));
    }
  }

  private static Instant end(VialDates dates, InUseRule rule) {
    return dates.end(rule, new Form.Solution(), ZoneOffset.UTC).at();
  }

  /** USP 28 text: warmer than the label for more than 4 hours, at most 40 degrees. */
  @Test
  void a_warm_spell_of_which_too_little_is_known_is_never_short_enough() {
    var warm = Optional.of(25);
    var nobody = Optional.<Integer>empty();

    assertThat(spell(warm, 5, 5)).isEqualTo(WarmSpell.Rule.DISCARD);
    assertThat(spell(warm, 4, 4)).isEqualTo(WarmSpell.Rule.SHORT_ENOUGH);
    assertThat(spell(warm, -1, 4)).isEqualTo(WarmSpell.Rule.SHORT_ENOUGH);
    assertThat(spell(warm, 3, 5)).isEqualTo(WarmSpell.Rule.NOT_KNOWN);
    assertThat(spell(warm, 3, -1)).isEqualTo(WarmSpell.Rule.NOT_KNOWN);
    assertThat(spell(warm, -1, -1)).isEqualTo(WarmSpell.Rule.NOT_KNOWN);
    assertThat(spell(nobody, 5, -1)).isEqualTo(WarmSpell.Rule.DISCARD);
    assertThat(spell(nobody, 1, 1)).isEqualTo(WarmSpell.Rule.NOT_KNOWN);
    assertThat(spell(Optional.of(41), 1, 1)).isEqualTo(WarmSpell.Rule.DISCARD);
    assertThat(spell(Optional.of(8), 5, 5)).isEqualTo(WarmSpell.Rule.SHORT_ENOUGH);
  }

  /** Hours below 0 are those that nobody knows. */
  private static WarmSpell.Rule spell(Optional<Integer> celsius, int least, int most) {
    return new WarmSpell(celsius, hours(least), hours(most)).by(8);
  }

  private static Optional<TimeSpan> hours(int hours) {
    return Optional.of(hours).filter(one -> one >= 0).map(TimeSpan::ofHours);
  }
}
