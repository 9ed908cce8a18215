package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.SimpleCauses;
import rungwise.quantities.TimeSpan;

/**
 * Injections that came into the record out of order count like the others: "at least 24 h apart",
 * "at most 3 a week" (US syringe label, 17), "at most 2 doses in 24 h" (2).
 */
final class WindowTest {

  private static final long SEED = 20_261_129;

  private static LabelWorld injectedAfter(Duration... from) {
    var world = new LabelWorld();
    for (Duration duration : from) {
      world.injectedAt(
          START.plus(duration),
          ml("0.12"),
          ml("0.12"),
          Grade.FULLER,
          minutes(20),
          SimpleCauses.NONE_FOUND);
    }
    return world;
  }

  private static List<GuardRule> rules(LabelWorld world, Duration at) {
    return TimeGuards.ask(world.at(START.plus(at)).question()).stream().map(Verdict::rule).toList();
  }

  @Test
  void an_injection_after_the_instant_is_too_near_like_one_before_it() {
    LabelWorld later = injectedAfter(Duration.ofHours(24));

    assertThat(rules(later, Duration.ZERO)).isEmpty();
    assertThat(rules(later, Duration.ofMillis(1))).containsExactly(GuardRule.SPACING);
  }

  @Test
  void a_third_in_a_day_counts_one_before_and_one_after() {
    LabelWorld world = injectedAfter(Duration.ZERO, Duration.ofHours(24).minusMillis(1));

    assertThat(rules(world, Duration.ofHours(12))).contains(GuardRule.THIRD_IN_24_HOURS);
    assertThat(rules(injectedAfter(Duration.ZERO, Duration.ofHours(24)), Duration.ofHours(12)))
        .doesNotContain(GuardRule.THIRD_IN_24_HOURS);
  }

  @Test
  void a_fourth_in_a_week_counts_those_that_came_after() {
    Duration week = Duration.ofDays(7);
    LabelWorld world = injectedAfter(Duration.ZERO, Duration.ofDays(5), week.minusMillis(1));

    assertThat(rules(world, Duration.ofHours(60))).containsExactly(GuardRule.WEEKLY_COUNT);
    assertThat(
            rules(injectedAfter(Duration.ZERO, Duration.ofHours(120), week), Duration.ofHours(60)))
        .isEmpty();
  }

  @Test
  void the_hold_clears_when_there_is_room_and_not_before() {
    LabelWorld world = injectedAfter(Duration.ZERO, Duration.ofHours(30));
    Question question = world.at(START.plus(Duration.ofHours(10))).question();

    Verdict spacing = TimeGuards.ask(question).getFirst();

    assertThat(spacing.rule()).isEqualTo(GuardRule.SPACING);
    assertThat(spacing.clears()).isEqualTo(new Clears.At(START.plus(Duration.ofHours(54))));
  }

  /** Against counting every span that holds the instant, for random instants in minutes. */
  @Test
  void a_row_is_full_exactly_where_a_span_with_the_instant_would_hold_one_more_than_fits() {
    var random = new Random(SEED);
    for (int round = 0; round < 2000; round++) {
      var from = new ArrayList<Duration>();
      int count = random.nextInt(6);
      for (int injection = 0; injection < count; injection++) {
        from.add(Duration.ofMinutes(random.nextInt(300)));
      }
      int most = 1 + random.nextInt(3);
      int span = 1 + random.nextInt(120);
      List<Injection> injections =
          injectedAfter(from.toArray(Duration[]::new)).question().history().injections();
      Instant at = START.plus(Duration.ofMinutes(random.nextInt(300)));
      var window = new Window(TimeSpan.ofMinutes(span), most);

      assertThat(window.fullAt(injections, at).isPresent())
          .as("seed %s, %s around %s, %s in %s min", SEED, from, at, most, span)
          .isEqualTo(isFull(injections, at, most, span));
      Instant free = window.freeFrom(injections, at);
      assertThat(isFull(injections, free, most, span)).isFalse();
      for (Instant one = at; one.isBefore(free); one = one.plusSeconds(60)) {
        assertThat(isFull(injections, one, most, span)).isTrue();
      }
    }
  }

  private static boolean isFull(List<Injection> injections, Instant at, int most, int span) {
    for (int begin = 0; begin < span; begin++) {
      Instant from = at.minusSeconds(60L * begin);
      Instant to = from.plusSeconds(60L * span);
      long inside =
          injections.stream()
              .filter(one -> !one.at().isBefore(from) && one.at().isBefore(to))
              .count();
      if (inside >= most) {
        return true;
      }
    }
    return false;
  }
}
