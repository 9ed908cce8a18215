package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.quantities.Acidity;
import rungwise.quantities.GasPressure;

/**
 * The corporal blood gas: ischaemic below 30, above 60 mmHg and below 7.25; non-ischaemic above 90,
 * below 40 and about 7.4 (BMJ Best Practice, priapism; rows G036 and G037 of clinical-checks.csv).
 */
final class GasTest {

  private static Twice<GasPressure> pressure(String text) {
    return Twice.once(GasPressure.parse(text).found().orElseThrow());
  }

  private static Twice<Acidity> ph(String text) {
    return Twice.once(Acidity.parse(text).found().orElseThrow());
  }

  private static GasReading read(String oxygen, String carbonDioxide, String ph) {
    return new Gas(pressure(oxygen), pressure(carbonDioxide), ph(ph)).read();
  }

  private static List<Asked> refusedAt(GasReading reading) {
    return reading instanceof GasReading.Refused refused
        ? refused.why().stream().map(Refusal::asked).toList()
        : List.of();
  }

  @ParameterizedTest
  @CsvSource({
    "29.9 mmHg,60.1 mmHg,7.249,Ischaemic",
    "30 mmHg,60.1 mmHg,7.249,Indeterminate",
    "29.9 mmHg,60 mmHg,7.249,Indeterminate",
    "29.9 mmHg,60.1 mmHg,7.25,Indeterminate",
    "90.1 mmHg,39.9 mmHg,7.35,NonIschaemic",
    "90.1 mmHg,39.9 mmHg,7.45,NonIschaemic",
    "90 mmHg,39.9 mmHg,7.4,Indeterminate",
    "90.1 mmHg,40 mmHg,7.4,Indeterminate",
    "90.1 mmHg,39.9 mmHg,7.349,Indeterminate",
    "90.1 mmHg,39.9 mmHg,7.451,Indeterminate",
    "40 mmHg,50 mmHg,7.35,Indeterminate",
    "3.99 kPa,8 kPa,7.2,Ischaemic",
    "4 kPa,8 kPa,7.2,Indeterminate",
    "3.99 kPa,7.99 kPa,7.2,Indeterminate",
    "12 kPa,5.33 kPa,7.4,NonIschaemic",
    "11.99 kPa,5.33 kPa,7.4,Indeterminate",
    "12 kPa,5.34 kPa,7.4,Indeterminate"
  })
  void each_limit_has_two_sides(String oxygen, String carbonDioxide, String ph, String reading) {
    assertThat(read(oxygen, carbonDioxide, ph).getClass().getSimpleName()).isEqualTo(reading);
  }

  @Test
  void what_is_met_is_told_with_it() {
    assertThat(read("25 mmHg", "55 mmHg", "7.3"))
        .isEqualTo(new GasReading.Indeterminate(List.of(Asked.OXYGEN), List.of()));
    assertThat(read("60 mmHg", "30 mmHg", "7.25"))
        .isEqualTo(new GasReading.Indeterminate(List.of(), List.of(Asked.CARBON_DIOXIDE)));
    assertThat(((GasReading.Indeterminate) read("25 mmHg", "55 mmHg", "7.3")).isInconsistent())
        .isFalse();
    assertThat(((GasReading.Indeterminate) read("60 mmHg", "30 mmHg", "7.25")).isInconsistent())
        .isTrue();
  }

  @Test
  void numbers_of_kpa_that_are_called_mmhg_are_never_read_as_non_ischaemic() {
    for (int oxygen = 1; oxygen <= 20; oxygen++) {
      for (int carbonDioxide = 1; carbonDioxide <= 20; carbonDioxide++) {
        var typed =
            new Gas(
                pressure(oxygen + " mmHg"),
                Twice.both(GasPressure.ofMmhg(carbonDioxide), GasPressure.ofMmhg(carbonDioxide)),
                ph("7.4"));

        assertThat(typed.read()).isInstanceOf(GasReading.Indeterminate.class);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "300 mmHg,50 mmHg,7.3,",
    "300.1 mmHg,50 mmHg,7.3,OXYGEN",
    "0 mmHg,50 mmHg,7.3,",
    "20 mmHg,5 mmHg,7.3,",
    "20 mmHg,4.9 mmHg,7.3,CARBON_DIOXIDE",
    "20 mmHg,200 mmHg,7.3,",
    "20 mmHg,200.1 mmHg,7.3,CARBON_DIOXIDE",
    "20 mmHg,50 mmHg,6.5,",
    "20 mmHg,50 mmHg,6.499,PH",
    "20 mmHg,50 mmHg,7.8,",
    "20 mmHg,50 mmHg,7.801,PH"
  })
  void what_no_blood_shows_is_typed_twice(
      String oxygen, String carbonDioxide, String ph, Asked asked) {
    assertThat(refusedAt(read(oxygen, carbonDioxide, ph)))
        .isEqualTo(asked == null ? List.of() : List.of(asked));
  }

  @Test
  void typed_twice_and_alike_it_is_read_and_otherwise_not() {
    GasPressure high = GasPressure.ofMmhg(400);

    assertThat(new Gas(Twice.both(high, high), pressure("30 mmHg"), ph("7.4")).read())
        .isInstanceOf(GasReading.NonIschaemic.class);
    assertThat(
            refusedAt(
                new Gas(Twice.both(high, GasPressure.ofMmhg(40)), pressure("30 mmHg"), ph("7.4"))
                    .read()))
        .containsExactly(Asked.OXYGEN);
    assertThat(refusedAt(read("301 mmHg", "4 mmHg", "6.4")))
        .containsExactly(Asked.OXYGEN, Asked.CARBON_DIOXIDE, Asked.PH);
  }
}
