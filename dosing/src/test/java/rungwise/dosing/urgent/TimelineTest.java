package rungwise.dosing.urgent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.quantities.TimeSpan;

/** How long it has lasted. 4 hours are the emergency of the US label and the EU core profile. */
final class TimelineTest {

  private static final Instant INJECTED = Instant.parse("2026-11-29T19:50:00Z");
  private static final Start INJECTION = new Start.OfInjection(INJECTED, INJECTED, "entry 7");
  private static final Start CANNOT_SAY = new Start.NotKnown(Optional.empty());

  private static Instant minute(long minutes) {
    return INJECTED.plus(Duration.ofMinutes(minutes));
  }

  private static Start said(long minute) {
    return Start.Said.at(minute(minute), Speaker.HE);
  }

  private static Elapsed elapsed(long minute, Start... starts) {
    return new Timeline(List.of(starts)).elapsed(minute(minute));
  }

  private static Elapsed known(long minutes) {
    return new Elapsed.Known(TimeSpan.ofMinutes(minutes));
  }

  private static Elapsed unknown(long atLeast) {
    return new Elapsed.Unknown(Optional.of(TimeSpan.ofMinutes(atLeast)));
  }

  @Test
  void four_hours_to_the_millisecond_are_an_emergency_and_one_less_is_not() {
    var timeline = new Timeline(List.of(INJECTION));

    assertThat(timeline.elapsed(minute(240)).isEmergency()).isTrue();
    assertThat(timeline.elapsed(minute(240)).untilEmergency()).isEmpty();
    assertThat(timeline.elapsed(minute(240).minusMillis(1)).isEmergency()).isFalse();
    assertThat(timeline.elapsed(minute(240).minusMillis(1)).untilEmergency())
        .contains(new TimeSpan(1));
    assertThat(elapsed(0, INJECTION)).isEqualTo(known(0));
  }

  @Test
  void a_milder_word_never_shortens_an_earlier_start_in_any_order() {
    assertThat(elapsed(200, INJECTION, said(30))).isEqualTo(known(200));
    assertThat(elapsed(200, said(30), INJECTION)).isEqualTo(known(200));
    assertThat(elapsed(200, said(90), said(30))).isEqualTo(known(170));
    assertThat(elapsed(200, said(30), said(90))).isEqualTo(known(170));
  }

  @Test
  void between_two_times_the_earlier_counts() {
    var between = new Start.Said(minute(10), minute(70), Speaker.SOMEBODY_WITH_HIM);

    assertThat(elapsed(250, between)).isEqualTo(known(240));
    assertThat(elapsed(250, between).isEmergency()).isTrue();
    assertThat(elapsed(249, between).isEmergency()).isFalse();
  }

  @Test
  void nothing_said_is_read_as_four_hours_or_more() {
    assertThat(elapsed(0)).isEqualTo(new Elapsed.Unknown(Optional.empty()));
    assertThat(elapsed(0).isEmergency()).isTrue();
  }

  @Test
  void who_cannot_say_is_an_emergency_whatever_others_say_until_it_is_struck() {
    var taken = new Start.Struck(CANNOT_SAY, "he looked at his telephone and knows the time");

    assertThat(elapsed(30, CANNOT_SAY).isEmergency()).isTrue();
    assertThat(elapsed(30, INJECTION, CANNOT_SAY)).isEqualTo(unknown(30));
    assertThat(elapsed(30, INJECTION, CANNOT_SAY).isEmergency()).isTrue();
    assertThat(elapsed(30, INJECTION, taken)).isEqualTo(known(30));
  }

  @Test
  void when_it_was_last_soft_is_the_earliest_start_of_who_cannot_say() {
    var lastSoft = new Start.NotKnown(Optional.of(minute(60)));

    assertThat(elapsed(299, lastSoft)).isEqualTo(known(239));
    assertThat(elapsed(299, lastSoft).isEmergency()).isFalse();
    assertThat(elapsed(300, lastSoft).isEmergency()).isTrue();
  }

  @Test
  void a_struck_start_counts_no_more_and_stays_to_be_read() {
    var struck = new Start.Struck(said(-400), "the injection of the day before was meant");
    var timeline = new Timeline(List.of(struck, INJECTION));

    assertThat(timeline.elapsed(minute(100))).isEqualTo(known(100));
    assertThat(timeline.starts()).contains(struck);
    assertThat(elapsed(100, struck).isEmergency()).isTrue();
  }

  @Test
  void a_start_after_now_is_not_believed() {
    assertThat(elapsed(0, said(1))).isEqualTo(new Elapsed.Unknown(Optional.empty()));
    assertThat(elapsed(0, said(1)).isEmergency()).isTrue();
    assertThat(elapsed(10, INJECTION, said(11))).isEqualTo(known(10));
  }

  @Test
  void what_is_no_statement_is_not_built() {
    assertThatThrownBy(() -> new Start.Said(minute(1), minute(0), Speaker.HE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Start.OfInjection(minute(1), minute(0), "entry 7"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Start.Struck(INJECTION, " "))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Start.Struck(new Start.Struck(INJECTION, "a"), "b"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Every set of up to three statements, against the rule in plain minutes. */
  @Test
  void no_statement_more_makes_it_shorter_or_calmer() {
    List<Start> all =
        List.of(INJECTION, said(-30), said(45), CANNOT_SAY, new Start.NotKnown(lastSoft()));
    for (int chosen = 1; chosen < 1 << all.size(); chosen++) {
      var some = new ArrayList<Start>();
      for (int index = 0; index < all.size(); index++) {
        if ((chosen >> index & 1) == 1) {
          some.add(all.get(index));
        }
      }
      boolean wasEmergency = new Timeline(some).elapsed(minute(230)).isEmergency();
      for (Start more : all) {
        var longer = new ArrayList<>(some);
        longer.add(more);
        Elapsed after = new Timeline(longer).elapsed(minute(230));
        assertThat(after.isEmergency() || !wasEmergency).as("%s and %s", some, more).isTrue();
        assertThat(new Timeline(longer).earliestCredible().orElse(Instant.MAX))
            .isBeforeOrEqualTo(new Timeline(some).earliestCredible().orElse(Instant.MAX));
      }
    }
  }

  private static Optional<Instant> lastSoft() {
    return Optional.of(minute(-15));
  }
}
