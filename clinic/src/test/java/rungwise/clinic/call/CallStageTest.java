package rungwise.clinic.call;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.Start;
import rungwise.dosing.urgent.Timeline;

class CallStageTest {

  private static final Instant START = Instant.parse("2026-11-30T02:00:00Z");

  private static CallStage after(Duration elapsed) {
    return CallStage.of(said(START).elapsed(START.plus(elapsed)));
  }

  private static Timeline said(Instant start) {
    return new Timeline(List.of(Start.Said.at(start, Speaker.HE)));
  }

  /** 4 h: US syringe label, 5.1 and 17; EU core safety profile the same. */
  @Test
  void from_240_minutes_on_it_is_an_emergency_and_not_a_millisecond_later() {
    assertThat(after(Duration.ofHours(4).minusMillis(1))).isEqualTo(CallStage.LONG);
    assertThat(after(Duration.ofHours(4))).isEqualTo(CallStage.EMERGENCY);
    assertThat(after(Duration.ofDays(2))).isEqualTo(CallStage.EMERGENCY);
  }

  /** 2 h: common practice, no source. */
  @Test
  void from_120_minutes_on_it_is_long() {
    assertThat(after(Duration.ZERO)).isEqualTo(CallStage.EARLY);
    assertThat(after(Duration.ofHours(2).minusMillis(1))).isEqualTo(CallStage.EARLY);
    assertThat(after(Duration.ofHours(2))).isEqualTo(CallStage.LONG);
  }

  @Test
  void what_cannot_be_counted_is_an_emergency() {
    var notKnown = new Start.NotKnown(Optional.empty());

    assertThat(CallStage.of(new Timeline(List.of()).elapsed(START))).isEqualTo(CallStage.EMERGENCY);
    assertThat(CallStage.of(new Timeline(List.of(notKnown)).elapsed(START)))
        .isEqualTo(CallStage.EMERGENCY);
    assertThat(CallStage.of(said(START.plusMillis(1)).elapsed(START)))
        .isEqualTo(CallStage.EMERGENCY);
  }
}
