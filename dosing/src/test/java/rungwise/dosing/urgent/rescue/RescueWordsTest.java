package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.quantities.Concentration;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What a refusal says: what was given, what is accepted and what to do. */
final class RescueWordsTest {

  private static final Volume TEN = Volume.parse("10 mL").orThrow();
  private static final Instant AT = Instant.parse("2026-11-30T10:00:00Z");

  private static Concentration mcg(long perMillilitre) {
    return new Concentration(perMillilitre * 1_000);
  }

  private static void says(Refusal refusal, Asked asked, String... parts) {
    assertThat(refusal.asked()).isEqualTo(asked);
    assertThat(refusal.words()).contains(parts).endsWith(".");
  }

  @Test
  void what_was_typed_is_named_with_what_to_write() {
    says(new Refusal.Ratio(Asked.STOCK, "1:1000"), Asked.STOCK, "\"1:1000\"", "10 mg/mL");
    says(new Refusal.NoUnit(Asked.DOSE, "200"), Asked.DOSE, "\"200\"", "unit", "100 mcg");
    says(new Refusal.VolumeForMass(Asked.DOSE, "2 mL"), Asked.DOSE, "\"2 mL\"", "100 mcg");
    says(new Refusal.MassWithoutVolume(Asked.STOCK, "10 mg"), Asked.STOCK, "\"10 mg\"", "per mL");
    says(new Refusal.NotRead(Asked.PH, "x", "\"x\" is no pH."), Asked.PH, "\"x\" is no pH.");
    says(new Refusal.TypeAgain(Asked.STOCK, "1 mg/mL"), Asked.STOCK, "1 mg/mL", "second time");
    says(new Refusal.TwoDiffer(Asked.STOCK, "1", "2"), Asked.STOCK, "1 and then 2", "the same");
    says(new Refusal.NoDose(), Asked.DOSE, "0 mcg", "100 mcg");
  }

  /** Both numbers of every comparison are said, always in micrograms. */
  @Test
  void a_strength_is_named_with_the_limit_that_it_passes() {
    says(
        new Refusal.WantedNotBelowStock(mcg(200), mcg(100)),
        Asked.WANTED,
        "200 mcg/mL",
        "100 mcg/mL",
        "a lower strength");
    says(new Refusal.WantedAboveMost(mcg(600), mcg(500)), Asked.WANTED, "600 mcg/mL", "500 mcg/mL");
    says(new Refusal.WantedBelowLeast(mcg(50), mcg(100)), Asked.WANTED, "50 mcg/mL", "100 mcg/mL");
    says(
        new Refusal.OneAmpouleShortcut(mcg(1_000), mcg(500)),
        Asked.WANTED,
        "1,000 mcg/mL (1 mg/mL)",
        "at most 500 mcg/mL");
    says(
        new Refusal.UndilutedStock(mcg(10_000), mcg(100), mcg(500)),
        Asked.STOCK,
        "10,000 mcg/mL (10 mg/mL)",
        "Dilute it");
    assertThat(new Refusal.UndilutedStock(mcg(50), mcg(100), mcg(500)).words())
        .contains("Take another stock")
        .doesNotContain("Dilute");
    assertThat(new Refusal.UndilutedStock(mcg(500), mcg(100), mcg(500)).words())
        .doesNotContain("Dilute");
  }

  @Test
  void a_part_or_a_time_is_named_with_the_way_out() {
    says(
        new Refusal.NotDrawable(Asked.TOTAL, mcg(10_000).volumeOf(mcg(333).in(TEN))),
        Asked.TOTAL,
        "0.333 mL",
        "10 mL");
    says(
        new Refusal.NoTwoSteps(mcg(10_000), mcg(100), TEN),
        Asked.STEPS,
        "10 mL of 100 mcg/mL",
        "one step");
    says(
        new Refusal.TooSoon(AT, AT.plusSeconds(180), TimeSpan.ofMinutes(3)),
        Asked.DOSE,
        "3 min",
        "either side");
  }

  @ParameterizedTest
  @EnumSource(Asked.class)
  void everything_that_is_asked_has_a_name_and_an_example(Asked asked) {
    assertThat(asked.words()).startsWith("the ");
    assertThat(asked.example()).isNotBlank();
  }

  @Test
  void a_published_scheme_says_what_its_text_says_and_no_more() {
    assertThat(List.of(PublishedScheme.values()))
        .allSatisfy(scheme -> assertThat(scheme.words()).contains("guideline"));
    assertThat(PublishedScheme.EAU.inAnHour()).map(Object::toString).contains("1 mg");
    assertThat(PublishedScheme.EAU.eachVolume()).isEmpty();
    assertThat(PublishedScheme.EAU.tried()).isEmpty();
    assertThat(PublishedScheme.AUA_SMSNA.inAnHour()).isEmpty();
    assertThat(PublishedScheme.AUA_SMSNA.eachVolume()).isEqualTo(Optional.of(volumeOf("1 mL")));
    assertThat(PublishedScheme.AUA_SMSNA.tried()).contains(TimeSpan.ofHours(1));
  }

  private static Volume volumeOf(String text) {
    return Volume.parse(text).orThrow();
  }
}
