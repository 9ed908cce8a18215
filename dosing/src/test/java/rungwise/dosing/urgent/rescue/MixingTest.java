package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.Marking;
import rungwise.dosing.urgent.rescue.Mixing.Way;
import rungwise.dosing.urgent.rescue.Mixing.Wish;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * Dilutions of phenylephrine. The numbers are C1 V1 = C2 V2, and the two steps of 1 mL and 9 mL are
 * those of rows G001 to G008 of clinical-checks.csv.
 */
final class MixingTest {

  private static final long SEED = 20_261_130;
  private static final int CASES = 4_000;

  private static Concentration mcg(long perMillilitre) {
    return new Concentration(perMillilitre * 1_000);
  }

  private static Volume ml(long tenths) {
    return Volume.ofMicrolitres(tenths * 100);
  }

  private static Mixing mix(Twice<Concentration> stock, long wanted, long tenths, Way way) {
    return Mixing.mix(new Wish(stock, mcg(wanted), ml(tenths), way), RescueSyringes.USUAL);
  }

  private static Mixing usual(long wanted, long tenths, Way way) {
    return mix(Twice.once(mcg(10_000)), wanted, tenths, way);
  }

  private static Twice<Concentration> twice(long stock) {
    return Twice.both(mcg(stock), mcg(stock));
  }

  private static List<Object> why(Mixing mixing) {
    return mixing instanceof Mixing.Refused refused
        ? refused.why().stream().<Object>map(Object::getClass).toList()
        : List.of();
  }

  @ParameterizedTest
  @CsvSource({"100,1000,9000", "200,2000,8000", "250,2500,7500", "500,5000,5000"})
  void two_steps_of_the_usual_stock(long wanted, long second, long saline) {
    var steps = (Mixing.TwoSteps) usual(wanted, 100, Way.TWO_STEPS);

    assertThat(steps.first().mix()).isEqualTo(new Mix(mcg(10_000), ml(10), ml(90), mcg(1_000)));
    assertThat(steps.second().mix())
        .isEqualTo(
            new Mix(
                mcg(1_000),
                Volume.ofMicrolitres(second),
                Volume.ofMicrolitres(saline),
                mcg(wanted)));
    assertThat(steps.ifSecondIsLeftOut()).isEqualTo(mcg(1_000));
  }

  @Test
  void a_weaker_stock_is_diluted_less_in_the_first_step() {
    var steps = (Mixing.TwoSteps) mix(twice(1_000), 100, 100, Way.TWO_STEPS);

    assertThat(steps.first().mix()).isEqualTo(new Mix(mcg(1_000), ml(10), ml(40), mcg(200)));
    assertThat(steps.second().mix()).isEqualTo(new Mix(mcg(200), ml(50), ml(50), mcg(100)));
  }

  @Test
  void one_step_only_where_it_is_asked_for_and_every_part_is_drawn() {
    assertThat(((Mixing.OneStep) usual(500, 100, Way.ONE_STEP)).step().mix())
        .isEqualTo(new Mix(mcg(10_000), ml(5), ml(95), mcg(500)));
    assertThat(why(usual(100, 100, Way.ONE_STEP))).containsExactly(Refusal.NotDrawable.class);
    assertThat(((Mixing.OneStep) usual(200, 500, Way.ONE_STEP)).step().mix())
        .isEqualTo(new Mix(mcg(10_000), ml(10), ml(490), mcg(200)));
  }

  @Test
  void the_wanted_strength_lies_between_the_published_ones_with_both_ends() {
    assertThat(usual(500, 100, Way.TWO_STEPS)).isInstanceOf(Mixing.TwoSteps.class);
    assertThat(why(usual(501, 100, Way.TWO_STEPS))).containsExactly(Refusal.WantedAboveMost.class);
    assertThat(usual(100, 100, Way.TWO_STEPS)).isInstanceOf(Mixing.TwoSteps.class);
    assertThat(why(usual(99, 100, Way.TWO_STEPS))).containsExactly(Refusal.WantedBelowLeast.class);
    assertThat(
            why(
                Mixing.mix(
                    new Wish(
                        Twice.once(mcg(10_000)), new Concentration(500_001), ml(100), Way.ONE_STEP),
                    RescueSyringes.USUAL)))
        .containsExactly(Refusal.WantedAboveMost.class);
    assertThat(
            why(
                Mixing.mix(
                    new Wish(
                        Twice.once(mcg(10_000)), new Concentration(99_999), ml(100), Way.ONE_STEP),
                    RescueSyringes.USUAL)))
        .containsExactly(Refusal.WantedBelowLeast.class);
  }

  @Test
  void saline_makes_nothing_stronger() {
    assertThat(why(mix(twice(200), 199, 100, Way.ONE_STEP)))
        .containsOnly(Refusal.NotDrawable.class);
    assertThat(why(mix(twice(200), 200, 100, Way.ONE_STEP)))
        .containsExactly(Refusal.WantedNotBelowStock.class);
    assertThat(why(mix(twice(200), 201, 100, Way.TWO_STEPS)))
        .containsExactly(Refusal.WantedNotBelowStock.class);
    assertThat(((Mixing.OneStep) mix(twice(200), 100, 100, Way.ONE_STEP)).step().mix())
        .isEqualTo(new Mix(mcg(200), ml(50), ml(50), mcg(100)));
  }

  @Test
  void one_ampoule_in_ten_millilitres_is_refused_by_its_name_in_any_number_of_steps() {
    assertThat(why(usual(1_000, 100, Way.TWO_STEPS)))
        .containsExactly(Refusal.OneAmpouleShortcut.class);
    assertThat(why(usual(1_000, 100, Way.ONE_STEP)))
        .containsExactly(Refusal.OneAmpouleShortcut.class);
    assertThat(why(usual(999, 100, Way.ONE_STEP))).containsExactly(Refusal.WantedAboveMost.class);
    assertThat(why(usual(1_001, 100, Way.ONE_STEP))).containsExactly(Refusal.WantedAboveMost.class);
  }

  /** Its arithmetic: 1 mL of 10 mg/mL and 9 mL of saline hold 500 mcg in 0.5 mL (row G030). */
  @Test
  void the_shortcut_holds_five_times_a_usual_dose_in_half_a_millilitre() {
    Mix shortcut = Mix.adding(mcg(10_000), ml(10), ml(90)).orElseThrow();

    assertThat(shortcut.gives().in(ml(5))).isEqualTo(Mass.ofPicograms(500_000_000));
  }

  @Test
  void any_stock_but_the_usual_is_typed_twice_and_alike() {
    assertThat(why(mix(Twice.once(mcg(5_000)), 100, 100, Way.TWO_STEPS)))
        .containsExactly(Refusal.TypeAgain.class);
    assertThat(why(mix(Twice.both(mcg(5_000), mcg(50_000)), 100, 100, Way.TWO_STEPS)))
        .containsExactly(Refusal.TwoDiffer.class);
    assertThat(mix(twice(5_000), 100, 100, Way.TWO_STEPS)).isInstanceOf(Mixing.TwoSteps.class);
    assertThat(why(mix(Twice.both(mcg(10_000), mcg(1_000)), 100, 100, Way.TWO_STEPS)))
        .containsExactly(Refusal.TwoDiffer.class);
    assertThat(
            why(
                Mixing.mix(
                    new Wish(
                        Twice.once(new Concentration(10_000_001)),
                        mcg(100),
                        ml(100),
                        Way.TWO_STEPS),
                    RescueSyringes.USUAL)))
        .containsExactly(Refusal.TypeAgain.class);
  }

  @Test
  void every_reason_is_told_at_once() {
    assertThat(why(mix(Twice.once(mcg(400)), 600, 100, Way.TWO_STEPS)))
        .containsExactly(
            Refusal.TypeAgain.class,
            Refusal.WantedNotBelowStock.class,
            Refusal.WantedAboveMost.class);
  }

  @ParameterizedTest
  @ValueSource(longs = {100, 101, 300, 499, 500})
  void a_label_between_the_published_strengths_is_ready_to_use_when_it_is_typed_twice(long stock) {
    assertThat(Mixing.asLabelled(twice(stock))).isEqualTo(new Mixing.ReadyToUse(mcg(stock)));
    assertThat(why(Mixing.asLabelled(Twice.once(mcg(stock)))))
        .containsExactly(Refusal.TypeAgain.class);
    assertThat(why(Mixing.asLabelled(Twice.both(mcg(stock), mcg(stock * 10)))))
        .containsExactly(Refusal.TwoDiffer.class);
  }

  @Test
  void no_stock_beyond_them_is_given_undiluted() {
    for (long stock : List.of(99_999L, 500_001L, 1_000_000L, 10_000_000L)) {
      var concentration = new Concentration(stock);

      assertThat(why(Mixing.asLabelled(Twice.both(concentration, concentration))))
          .as("%s", concentration)
          .containsExactly(Refusal.UndilutedStock.class);
    }
    assertThat(why(Mixing.asLabelled(Twice.once(mcg(10_000)))))
        .containsExactly(Refusal.TypeAgain.class, Refusal.UndilutedStock.class);
  }

  @Test
  void a_part_that_no_syringe_draws_is_refused() {
    assertThat(why(usual(100, 101, Way.TWO_STEPS))).containsExactly(Refusal.NoTwoSteps.class);
    assertThat(why(usual(100, 1_001, Way.TWO_STEPS))).containsExactly(Refusal.NoTwoSteps.class);
    assertThat(why(usual(300, 100, Way.ONE_STEP))).containsExactly(Refusal.NotDrawable.class);
    assertThat(why(usual(333, 1, Way.ONE_STEP))).containsExactly(Refusal.NotDrawable.class);
    assertThat(
            why(
                Mixing.mix(
                    new Wish(Twice.once(mcg(10_000)), mcg(100), ml(100), Way.TWO_STEPS),
                    List.of(Barrels.MILLILITRE_1))))
        .containsExactly(Refusal.NoTwoSteps.class);
  }

  /** 25 percent is where a smaller syringe is asked for: 22 at 0.1 mL, 27 at 0.08 mL of 1 mL. */
  @Test
  void a_part_is_drawn_down_to_where_another_syringe_is_asked_for() {
    assertThat(Part.of(Volume.ofMicrolitres(90), List.of(Barrels.MILLILITRE_1))).isPresent();
    assertThat(Part.of(Volume.ofMicrolitres(80), List.of(Barrels.MILLILITRE_1))).isEmpty();
    assertThat(Part.of(Volume.ofMicrolitres(95), List.of(Barrels.MILLILITRE_1))).isEmpty();
    assertThat(Part.of(Volume.ZERO, RescueSyringes.USUAL)).isEmpty();
    assertThat(Part.of(ml(500), RescueSyringes.USUAL)).isPresent();
    assertThat(Part.of(ml(510), RescueSyringes.USUAL)).isEmpty();
  }

  @Test
  void no_rescue_is_prepared_by_units_of_insulin() {
    assertThat(RescueSyringes.USUAL)
        .allSatisfy(
            barrel -> assertThat(barrel.marking()).isInstanceOf(Marking.MillilitreLines.class));
  }

  /** Drug in is drug out, nothing is more than was asked for, for stocks and wishes at random. */
  @Test
  void mixing_conserves_the_drug_exactly_and_makes_no_more_than_was_asked_for() {
    var random = new Random(SEED);
    int made = 0;
    for (int i = 0; i < CASES; i++) {
      Concentration stock = mcg(List.of(10_000, 5_000, 2_000, 1_000, 600).get(random.nextInt(5)));
      Concentration wanted = mcg(100 + 25L * random.nextInt(17));
      Volume total = ml(5L * (1 + random.nextInt(100)));
      Way way = random.nextBoolean() ? Way.TWO_STEPS : Way.ONE_STEP;
      var wish = new Wish(Twice.both(stock, stock), wanted, total, way);
      for (Mix mix : mixesOf(Mixing.mix(wish, RescueSyringes.USUAL))) {
        made++;
        assertThat(mix.gives().picogramsPerMicrolitre() * mix.total().microlitres())
            .as("seed %s: %s", SEED, wish)
            .isEqualTo(mix.from().picogramsPerMicrolitre() * mix.stock().microlitres());
        assertThat(mix.gives()).isLessThan(mix.from());
      }
      assertThat(lastOf(Mixing.mix(wish, RescueSyringes.USUAL)))
          .as("seed %s: %s", SEED, wish)
          .allSatisfy(
              mix -> {
                assertThat(mix.total()).isEqualTo(total);
                assertThat(mix.gives()).isEqualTo(wanted);
              });
    }
    assertThat(made).isGreaterThan(CASES / 10);
  }

  private static List<Mix> mixesOf(Mixing mixing) {
    return switch (mixing) {
      case Mixing.OneStep one -> List.of(one.step().mix());
      case Mixing.TwoSteps two -> List.of(two.first().mix(), two.second().mix());
      case Mixing.ReadyToUse ready -> List.of();
      case Mixing.Refused refused -> List.of();
    };
  }

  private static List<Mix> lastOf(Mixing mixing) {
    List<Mix> all = mixesOf(mixing);
    return all.isEmpty() ? List.of() : List.of(all.getLast());
  }

  @Test
  void what_does_not_add_up_is_not_built() {
    assertThatThrownBy(() -> new Mix(mcg(10_000), ml(10), ml(89), mcg(1_000)))
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Mix(mcg(10_000), ml(10), ml(0), mcg(10_000)))
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new Part(Volume.ofMicrolitres(95), Barrels.MILLILITRE_1))
        .hasMessageStartingWith("bug:");
    assertThat(Mix.adding(mcg(10_000), ml(10), ml(20))).isEmpty();
    assertThat(Mix.adding(mcg(10_000), ml(10), ml(0))).isEmpty();
    assertThat(Mix.toTotal(mcg(10_000), mcg(300), Volume.ofMicrolitres(10))).isEmpty();
  }

  @Test
  void the_look_alike_names_are_never_without_what_they_do() {
    assertThat(Stream.of(RescueDrug.values()).map(RescueDrug::words))
        .anySatisfy(words -> assertThat(words).contains("phenylephrine", "raises", "the rescue"))
        .anySatisfy(words -> assertThat(words).contains("phentolamine", "lowers", "mixture"));
  }

  /** Rows G001 to G008 the other way round: what 1 mL of a stock becomes. */
  @Test
  void a_whole_volume_of_stock_is_diluted_to_what_is_wanted_or_not_at_all() {
    assertThat(Mix.ofStock(mcg(10_000), ml(10), mcg(1_000)))
        .contains(new Mix(mcg(10_000), ml(10), ml(90), mcg(1_000)));
    assertThat(Mix.ofStock(mcg(1_000), ml(10), mcg(1_000))).isEmpty();
    assertThat(Mix.ofStock(mcg(100), Volume.ofMicrolitres(1), new Concentration(99_000)))
        .as("1.0101... mL of each 1 mL is no whole volume")
        .isEmpty();
  }

  @Test
  void a_part_names_its_line_and_its_syringe() {
    assertThat(Part.of(ml(2), RescueSyringes.USUAL).orElseThrow())
        .hasToString("0.2 mL (0.2 mL line on a 1 mL syringe marked in mL)");
  }
}
