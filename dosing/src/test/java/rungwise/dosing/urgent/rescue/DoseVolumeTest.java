package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** The volume of a dose: rows G011 to G017 of clinical-checks.csv, and its edges. */
final class DoseVolumeTest {

  private static final long SEED = 20_261_130;

  private static Mass mcg(long count) {
    return Mass.ofPicograms(count * 1_000_000);
  }

  private static Concentration perMillilitre(long count) {
    return new Concentration(count * 1_000);
  }

  private static DoseVolume of(Twice<Mass> dose, long strength) {
    return DoseVolume.of(dose, perMillilitre(strength), RescueSyringes.USUAL);
  }

  private static List<Object> why(DoseVolume volume) {
    return volume instanceof DoseVolume.Refused refused
        ? refused.why().stream().<Object>map(Object::getClass).toList()
        : List.of();
  }

  @ParameterizedTest
  @CsvSource({"200,200,1000", "200,500,400", "100,100,1000", "500,100,5000", "500,500,1000"})
  void a_dose_in_a_strength_is_one_exact_volume(long dose, long strength, long microlitres) {
    assertThat(of(Twice.once(mcg(dose)), strength))
        .isInstanceOfSatisfying(
            DoseVolume.Drawn.class,
            drawn ->
                assertThat(drawn.part().volume()).isEqualTo(Volume.ofMicrolitres(microlitres)));
  }

  @Test
  void a_dose_between_two_lines_is_refused_and_not_rounded() {
    assertThat(why(of(Twice.once(mcg(100)), 300))).containsExactly(Refusal.NotDrawable.class);
    assertThat(why(of(Twice.once(mcg(250)), 200))).containsExactly(Refusal.NotDrawable.class);
    assertThat(why(of(Twice.once(Mass.ofPicograms(200_000_001)), 200)))
        .containsExactly(Refusal.NotDrawable.class);
  }

  @Test
  void outside_the_published_doses_it_is_typed_twice() {
    assertThat(why(of(Twice.once(mcg(100)), 100))).isEmpty();
    assertThat(why(of(Twice.once(mcg(500)), 100))).isEmpty();
    assertThat(why(of(Twice.once(mcg(99)), 100))).containsExactly(Refusal.TypeAgain.class);
    assertThat(why(of(Twice.once(mcg(600)), 100))).containsExactly(Refusal.TypeAgain.class);
    assertThat(why(of(Twice.once(Mass.ofPicograms(500_000_001)), 500)))
        .contains(Refusal.TypeAgain.class);
    assertThat(why(of(Twice.both(mcg(600), mcg(60)), 100)))
        .containsExactly(Refusal.TwoDiffer.class);
    assertThat(why(of(Twice.both(mcg(50), mcg(50)), 100))).isEmpty();
    assertThat(why(of(Twice.both(mcg(200), mcg(20)), 100)))
        .containsExactly(Refusal.TwoDiffer.class);
  }

  @Test
  void a_strength_that_is_not_given_has_no_volume() {
    assertThat(why(of(Twice.once(mcg(500)), 1_000))).containsExactly(Refusal.UndilutedStock.class);
    assertThat(why(of(Twice.once(mcg(100)), 50))).containsExactly(Refusal.UndilutedStock.class);
    assertThat(
            why(
                DoseVolume.of(
                    Twice.once(mcg(500)), new Concentration(500_001), RescueSyringes.USUAL)))
        .contains(Refusal.UndilutedStock.class);
    assertThat(why(of(Twice.both(mcg(0), mcg(0)), 100))).containsExactly(Refusal.NoDose.class);
  }

  /** What is drawn holds what was asked for and never more, whatever is asked. */
  @Test
  void no_volume_holds_more_than_was_asked_for() {
    var random = new Random(SEED);
    int drawn = 0;
    for (int i = 0; i < 20_000; i++) {
      Mass dose = Mass.ofPicograms((1 + random.nextLong(600)) * 1_000_000);
      Concentration strength = perMillilitre(100 + 25L * random.nextInt(17));
      DoseVolume volume = DoseVolume.of(Twice.both(dose, dose), strength, RescueSyringes.USUAL);
      if (volume instanceof DoseVolume.Drawn found) {
        drawn++;
        assertThat(found.part().volume().microlitres() * strength.picogramsPerMicrolitre())
            .as("seed %s", SEED)
            .isEqualTo(dose.picograms());
      }
    }
    assertThat(drawn).isGreaterThan(1_000);
  }
}
