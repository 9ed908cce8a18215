package rungwise.clinic.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.clock.ClockBelief.Sign;

final class ClockWatchTest {

  private static final Instant START = Instant.parse("2026-03-07T16:00:00Z");

  private Instant truth = START;
  private Duration ahead = Duration.ZERO;
  private ClockWatch watch = begun();

  private ClockWatch begun() {
    return begun(Optional.empty());
  }

  private ClockWatch begun(Optional<Instant> newest) {
    return new ClockWatch(
        () -> truth.plus(ahead), () -> Duration.between(START, truth).toNanos(), newest);
  }

  private void pass(Duration time) {
    truth = truth.plus(time);
  }

  private void twoBrowsersSay(Duration offset) {
    watch.heard("192.0.2.7", truth.plus(offset));
    watch.heard("192.0.2.8", truth.plus(offset));
  }

  private void assertCompared() {
    assertThat(watch.belief()).isEqualTo(new ClockBelief.Compared(ClockWatch.TOLERANCE));
  }

  private void assertAlone(boolean isConfirmed) {
    assertThat(watch.belief()).isInstanceOf(ClockBelief.NotCompared.class);
    assertThat(watch.belief().isKnown()).isEqualTo(isConfirmed);
  }

  private void assertWrongBy(Sign.What what, Duration by) {
    assertThat(watch.belief())
        .isInstanceOfSatisfying(
            ClockBelief.Wrong.class,
            wrong -> assertThat(wrong.signs()).contains(new Sign(what, by)));
    assertThat(watch.belief().isKnown()).isFalse();
  }

  @Test
  void while_nothing_answers_it_is_not_compared_and_not_known() {
    assertAlone(/* isConfirmed= */ false);
    assertThat(watch.belief().doubt()).isPresent();
  }

  @Test
  void one_browser_decides_nothing_and_two_do() {
    watch.heard("192.0.2.7", truth);
    assertAlone(/* isConfirmed= */ false);
    watch.heard("192.0.2.7", truth);
    assertAlone(/* isConfirmed= */ false);
    watch.heard("192.0.2.8", truth);
    assertCompared();
  }

  @Test
  void one_browser_that_differs_is_named_and_stops_nobody() {
    watch.confirmed("Ines Halloran");
    watch.heard("192.0.2.7", truth.minus(Duration.ofDays(1)));

    assertThat(watch.belief())
        .isInstanceOfSatisfying(
            ClockBelief.NotCompared.class,
            alone -> assertThat(alone.stranger()).contains(Duration.ofDays(1)));
    assertAlone(/* isConfirmed= */ true);
  }

  @Test
  void two_that_differ_say_that_it_is_wrong_unless_more_agree() {
    twoBrowsersSay(Duration.ofHours(-3));
    assertWrongBy(Sign.What.BROWSERS, Duration.ofHours(3));

    watch.heard("192.0.2.9", truth);
    watch.heard("192.0.2.10", truth);
    assertWrongBy(Sign.What.BROWSERS, Duration.ofHours(3));

    watch.heard("192.0.2.11", truth);
    assertCompared();
  }

  @Test
  void a_difference_is_told_from_just_over_two_minutes() {
    twoBrowsersSay(ClockWatch.TOLERANCE.negated());
    assertCompared();
    twoBrowsersSay(ClockWatch.TOLERANCE.plusMillis(1).negated());
    assertThat(watch.belief()).isInstanceOf(ClockBelief.Wrong.class);
    twoBrowsersSay(ClockWatch.TOLERANCE.plusMillis(1));
    assertThat(watch.belief()).isInstanceOf(ClockBelief.Wrong.class);
  }

  @Test
  void the_time_source_is_believed_for_an_hour() {
    watch.told(truth);
    pass(Duration.ofHours(1).minusMillis(1));
    assertCompared();
    pass(Duration.ofMillis(1));
    assertAlone(/* isConfirmed= */ false);
  }

  @Test
  void browsers_count_for_twelve_hours() {
    twoBrowsersSay(Duration.ZERO);
    pass(Duration.ofHours(12).minusMillis(1));
    assertCompared();
    pass(Duration.ofMillis(1));
    assertAlone(/* isConfirmed= */ false);
  }

  @Test
  void what_was_said_before_a_jump_shows_the_jump() {
    watch.told(truth);
    assertCompared();
    ahead = Duration.ofDays(1);
    assertWrongBy(Sign.What.TIME_SOURCE, Duration.ofDays(1));
    ahead = Duration.ofDays(-1);
    assertWrongBy(Sign.What.TIME_SOURCE, Duration.ofDays(-1));
    ahead = Duration.ZERO;
    assertCompared();
  }

  @Test
  void a_clock_that_was_wrong_at_the_start_and_is_set_right_is_right() {
    ahead = Duration.ofDays(1);
    watch = begun();
    watch.told(truth);
    assertWrongBy(Sign.What.TIME_SOURCE, Duration.ofDays(1));

    ahead = Duration.ZERO;
    assertCompared();

    pass(Duration.ofHours(2));
    assertAlone(/* isConfirmed= */ false);
  }

  @Test
  void alone_a_jump_is_seen_by_the_steady_count_until_a_person_has_looked() {
    watch.confirmed("Ines Halloran");
    assertAlone(/* isConfirmed= */ true);
    ahead = Duration.ofHours(1);
    assertWrongBy(Sign.What.STEADY_COUNT, Duration.ofHours(1));
    watch.confirmed("Ines Halloran");
    assertAlone(/* isConfirmed= */ true);
  }

  @Test
  void no_person_lifts_that_it_is_behind_the_record_and_another_clock_does() {
    watch = begun(Optional.of(truth.plus(Duration.ofDays(1))));
    assertWrongBy(Sign.What.RECORD, Duration.ofDays(-1));
    watch.confirmed("Ines Halloran");
    assertWrongBy(Sign.What.RECORD, Duration.ofDays(-1));
    watch.told(truth);
    assertCompared();
  }

  @Test
  void behind_what_it_has_said_itself_it_is_behind_the_record() {
    watch.confirmed("Ines Halloran");
    pass(Duration.ofHours(1));
    assertAlone(/* isConfirmed= */ true);
    ahead = Duration.ofHours(-1);
    watch.confirmed("Ines Halloran");

    assertWrongBy(Sign.What.RECORD, Duration.ofHours(-1));
  }

  @Test
  void a_persons_word_counts_for_a_day() {
    watch.confirmed("Ines Halloran");
    pass(Duration.ofDays(1).minusMillis(1));
    assertAlone(/* isConfirmed= */ true);
    pass(Duration.ofMillis(1));
    assertAlone(/* isConfirmed= */ false);
  }

  @Test
  void a_wrong_clock_is_named_in_words() {
    watch.told(truth.minus(Duration.ofDays(1)));

    assertThat(watch.belief().doubt())
        .contains("the clock of the server is wrong: it is 1 day ahead of the time source");
    assertThat(watch.belief().token()).isEqualTo("wrong");
  }
}
