package rungwise.dosing.urgent.rescue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rungwise.dosing.urgent.rescue.LogVerdict.Reason;
import rungwise.dosing.urgent.rescue.RescueLog.Answer;
import rungwise.dosing.urgent.rescue.RescueLog.Flag;
import rungwise.dosing.urgent.rescue.RescueLog.Given;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;

/**
 * The log of one rescue. Limits: EAU, Figure 13 (200 mcg every 3 to 5 min, at most 1 mg in 1 h),
 * rows B003, B004 and G019 to G026 of clinical-checks.csv.
 */
final class RescueLogTest {

  private static final long SEED = 20_261_130;
  private static final Instant START = Instant.parse("2026-11-30T10:00:00Z");
  private static final RescueLimits LIMITS = RescueLimits.SAMPLE.value();
  private static final RescueLog NOTHING = log(List.of(), List.of());

  private static Mass mcg(long count) {
    return Mass.ofPicograms(count * 1_000_000);
  }

  private static Instant minute(long minutes) {
    return START.plus(Duration.ofMinutes(minutes));
  }

  private static Given given(long dose, long minute) {
    return given(dose, minute(minute));
  }

  private static Given given(long dose, Instant at) {
    return new Given(mcg(dose), at, Side.LEFT);
  }

  private static RescueLog log(List<Given> given, List<Instant> pressures) {
    return new RescueLog(given, pressures, Answer.NO, Optional.of("a second reader"));
  }

  /** A log with a pressure at the minute of the question, so that only doses matter. */
  private static RescueLog measured(long at, Given... given) {
    return log(List.of(given), List.of(minute(at)));
  }

  private static LogVerdict ask(RescueLog log, long dose, Instant at) {
    return log.next(Twice.once(mcg(dose)), at, LIMITS);
  }

  private static List<Object> reasons(LogVerdict verdict) {
    return verdict instanceof LogVerdict.Hold hold
        ? hold.reasons().stream().<Object>map(Object::getClass).toList()
        : List.of();
  }

  private static List<Object> refusals(LogVerdict verdict) {
    return verdict instanceof LogVerdict.Refused refused
        ? refused.why().stream().<Object>map(Object::getClass).toList()
        : List.of();
  }

  @Test
  void exactly_three_minutes_after_the_last_are_enough_and_a_millisecond_less_is_not() {
    RescueLog log = log(List.of(given(200, 0)), List.of(minute(1)));

    assertThat(ask(log, 200, minute(3))).isEqualTo(new LogVerdict.Allowed(mcg(400)));
    assertThat(ask(log, 200, minute(3).minusMillis(1)))
        .isEqualTo(
            new LogVerdict.Refused(
                List.of(new Refusal.TooSoon(minute(0), minute(3), TimeSpan.ofMinutes(3)))));
    assertThat(refusals(ask(log, 200, minute(0)))).containsExactly(Refusal.TooSoon.class);
    assertThat(log.notBefore(LIMITS)).contains(minute(3));
    assertThat(NOTHING.notBefore(LIMITS)).isEmpty();
  }

  @Test
  void a_dose_that_is_written_with_a_later_time_makes_the_next_wait_for_it() {
    RescueLog log = log(List.of(given(200, 10), given(200, 0)), List.of(minute(11)));

    assertThat(refusals(ask(log, 200, minute(5)))).containsExactly(Refusal.TooSoon.class);
    assertThat(refusals(ask(log, 200, minute(12)))).containsExactly(Refusal.TooSoon.class);
    assertThat(ask(log, 200, minute(13))).isEqualTo(new LogVerdict.Allowed(mcg(600)));
  }

  @Test
  void exactly_the_limit_is_allowed_and_a_picogram_more_is_held() {
    RescueLog log = measured(30, given(200, 0), given(200, 5), given(200, 10), given(200, 15));

    assertThat(ask(log, 200, minute(30))).isEqualTo(new LogVerdict.Allowed(mcg(1_000)));
    LogVerdict over = log.next(Twice.once(Mass.ofPicograms(200_000_001)), minute(30), LIMITS);
    assertThat(over)
        .isEqualTo(
            new LogVerdict.Hold(
                Mass.ofPicograms(1_000_000_001),
                List.of(new Reason.OverLimit(Mass.ofPicograms(1_000_000_001), mcg(1_000)))));
  }

  @Test
  void a_dose_of_exactly_an_hour_ago_counts_and_one_of_a_millisecond_more_does_not() {
    var sixty = new Given(mcg(500), minute(0), Side.LEFT);
    var more = new Given(mcg(500), minute(0).minusMillis(1), Side.LEFT);

    assertThat(reasons(ask(measured(60, sixty, given(400, 30)), 200, minute(60))))
        .containsExactly(Reason.OverLimit.class);
    assertThat(ask(measured(60, more, given(400, 30)), 200, minute(60)))
        .isEqualTo(new LogVerdict.Allowed(mcg(600)));
    assertThat(measured(60, sixty).inLastHour(minute(60))).isEqualTo(mcg(500));
    assertThat(measured(60, more).inLastHour(minute(60))).isEqualTo(mcg(0));
    assertThat(measured(60, sixty).inLastHour(minute(0))).isEqualTo(mcg(500));
    assertThat(measured(60, sixty).inLastHour(minute(0).minusMillis(1))).isEqualTo(mcg(0));
  }

  @Test
  void either_side_counts() {
    var left = new Given(mcg(500), minute(0), Side.LEFT);
    var right = new Given(mcg(500), minute(0), Side.RIGHT);
    RescueLog log = log(List.of(left, right), List.of(minute(4)));

    assertThat(log.inLastHour(minute(5))).isEqualTo(mcg(1_000));
    assertThat(reasons(ask(log, 100, minute(5)))).containsExactly(Reason.OverLimit.class);
    assertThat(log.flags(LIMITS))
        .containsExactly(new Flag.TooSoon(right, left), new Flag.Together(right, mcg(1_000)));
    RescueLog other = log(List.of(left), List.of(minute(1)));
    assertThat(refusals(ask(other, 200, minute(2)))).containsExactly(Refusal.TooSoon.class);
  }

  @Test
  void without_a_pressure_since_the_last_dose_it_is_held() {
    Given dose = given(200, 10);

    assertThat(reasons(ask(log(List.of(dose), List.of(minute(10))), 200, minute(20))))
        .containsExactly(Reason.PressureNotWritten.class);
    assertThat(reasons(ask(log(List.of(dose), List.of(minute(10).plusMillis(1))), 200, minute(20))))
        .isEmpty();
    assertThat(reasons(ask(log(List.of(dose), List.of(minute(20))), 200, minute(20)))).isEmpty();
    assertThat(reasons(ask(log(List.of(dose), List.of(minute(21))), 200, minute(20))))
        .containsExactly(Reason.PressureNotWritten.class);
    assertThat(ask(log(List.of(dose), List.of()), 200, minute(20)))
        .isEqualTo(
            new LogVerdict.Hold(
                mcg(400), List.of(new Reason.PressureNotWritten(Optional.of(minute(10))))));
  }

  @Test
  void before_the_first_dose_a_pressure_of_the_same_hour_is_needed() {
    assertThat(reasons(ask(NOTHING, 200, minute(60))))
        .containsExactly(Reason.PressureNotWritten.class);
    assertThat(ask(log(List.of(), List.of(minute(0))), 200, minute(60)))
        .isEqualTo(new LogVerdict.Allowed(mcg(200)));
    assertThat(reasons(ask(log(List.of(), List.of(minute(0).minusMillis(1))), 200, minute(60))))
        .containsExactly(Reason.PressureNotWritten.class);
  }

  @ParameterizedTest
  @EnumSource(Answer.class)
  void an_mao_inhibitor_or_not_known_holds(Answer answer) {
    var log = new RescueLog(List.of(), List.of(minute(0)), answer, Optional.of("a reader"));

    assertThat(reasons(ask(log, 200, minute(1))))
        .isEqualTo(answer == Answer.NO ? List.of() : List.of(Reason.MaoInhibitor.class));
  }

  @Test
  void without_a_second_person_it_is_held() {
    for (Optional<String> nobody : List.of(Optional.<String>empty(), Optional.of("  "))) {
      var log = new RescueLog(List.of(), List.of(minute(0)), Answer.NO, nobody);

      assertThat(reasons(ask(log, 200, minute(1)))).containsExactly(Reason.NoSecondPerson.class);
    }
  }

  @Test
  void all_reasons_are_told_at_once() {
    var log =
        new RescueLog(
            List.of(given(500, 0), given(500, 5)), List.of(), Answer.NOT_KNOWN, Optional.empty());
    var longer = new RescueLimits(mcg(1_000), TimeSpan.ofMinutes(5));

    assertThat(reasons(log.next(Twice.once(mcg(100)), minute(9), longer)))
        .containsExactly(
            Reason.OverLimit.class,
            Reason.SoonerThanSigned.class,
            Reason.PressureNotWritten.class,
            Reason.MaoInhibitor.class,
            Reason.NoSecondPerson.class);
  }

  @Test
  void a_clinic_may_sign_longer_and_never_shorter() {
    var longer = new RescueLimits(mcg(1_000), TimeSpan.ofMinutes(5));
    RescueLog log = log(List.of(given(200, 0)), List.of(minute(1)));

    assertThat(reasons(log.next(Twice.once(mcg(200)), minute(5).minusMillis(1), longer)))
        .containsExactly(Reason.SoonerThanSigned.class);
    assertThat(log.next(Twice.once(mcg(200)), minute(5), longer))
        .isInstanceOf(LogVerdict.Allowed.class);
    assertThat(log.notBefore(longer)).contains(minute(5));
    assertThatThrownBy(() -> new RescueLimits(mcg(1_000), new TimeSpan(179_999)))
        .hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> new RescueLimits(mcg(0), TimeSpan.ofMinutes(3)))
        .hasMessageStartingWith("bug:");
  }

  @Test
  void a_dose_is_typed_twice_outside_what_is_published() {
    RescueLog log = measured(0);

    assertThat(refusals(ask(log, 99, minute(0)))).containsExactly(Refusal.TypeAgain.class);
    assertThat(ask(log, 100, minute(0))).isInstanceOf(LogVerdict.Allowed.class);
    assertThat(ask(log, 500, minute(0))).isInstanceOf(LogVerdict.Allowed.class);
    assertThat(refusals(ask(log, 501, minute(0)))).containsExactly(Refusal.TypeAgain.class);
    assertThat(log.next(Twice.both(mcg(600), mcg(600)), minute(0), LIMITS))
        .isInstanceOf(LogVerdict.Allowed.class);
    assertThat(refusals(log.next(Twice.both(mcg(600), mcg(60)), minute(0), LIMITS)))
        .containsExactly(Refusal.TwoDiffer.class);
    assertThat(refusals(log.next(Twice.once(mcg(0)), minute(0), LIMITS)))
        .containsExactly(Refusal.NoDose.class);
  }

  @Test
  void a_hold_is_lifted_by_a_clinician_with_a_reason_and_a_refusal_by_nobody() {
    var hold = (LogVerdict.Hold) ask(NOTHING, 200, minute(0));

    assertThat(hold.overriddenBy("T. Wren", "the monitor is read aloud").hold()).isEqualTo(hold);
    assertThatThrownBy(() -> hold.overriddenBy("T. Wren", " ")).hasMessageStartingWith("bug:");
    assertThatThrownBy(() -> hold.overriddenBy("", "a reason")).hasMessageStartingWith("bug:");
    assertThat(Arrays.stream(LogVerdict.Refused.class.getDeclaredMethods()))
        .noneMatch(method -> method.getReturnType().equals(LogVerdict.Overridden.class));
  }

  @Test
  void what_was_given_is_written_in_any_order_flagged_and_counted() {
    Given first = given(200, 0);
    Given second = given(800, 2);
    RescueLog log = NOTHING.with(second).with(first);

    assertThat(log.given()).containsExactly(first, second);
    assertThat(log.flags(LIMITS))
        .containsExactly(
            new Flag.TooSoon(second, first),
            new Flag.Together(second, mcg(1_000)),
            new Flag.Unusual(second));
    assertThat(log.with(given(100, 60)).flags(LIMITS))
        .contains(new Flag.TooMuch(given(100, 60), mcg(1_100)));
    assertThat(log.with(given(100, 61)).flags(LIMITS))
        .noneMatch(flag -> flag instanceof Flag.TooMuch);
    assertThat(NOTHING.with(first).with(given(200, 3)).flags(LIMITS)).isEmpty();
    assertThat(log.notBefore(LIMITS)).contains(minute(5));
    assertThatThrownBy(() -> given(0, 0)).hasMessageStartingWith("bug:");
  }

  /** 500 mcg at once: AUA/SMSNA, row B004. */
  @Test
  void two_halves_into_two_sides_are_one_dose() {
    var left = new Given(mcg(300), minute(0), Side.LEFT);
    var right = new Given(mcg(300), minute(1), Side.RIGHT);

    assertThat(log(List.of(left, right), List.of()).flags(LIMITS))
        .containsExactly(new Flag.TooSoon(right, left), new Flag.Together(right, mcg(600)));
    var small = new Given(mcg(200), minute(1), Side.RIGHT);
    assertThat(log(List.of(left, small), List.of()).flags(LIMITS))
        .containsExactly(new Flag.TooSoon(small, left));
    var third = new Given(mcg(100), minute(4), Side.LEFT);
    assertThat(log(List.of(left, small, third), List.of()).flags(LIMITS))
        .containsExactly(new Flag.TooSoon(small, left));
  }

  @Test
  void a_dose_of_which_nobody_knows_the_amount_counts_and_makes_the_sum_unknown() {
    var unknown = new Given(Optional.empty(), Optional.empty(), minute(0), Side.NOT_KNOWN);
    RescueLog log = measured(5, unknown);

    assertThat(refusals(ask(log, 100, minute(2)))).containsExactly(Refusal.TooSoon.class);
    assertThat(reasons(ask(log, 100, minute(5)))).containsExactly(Reason.AmountNotKnown.class);
    assertThat(log.flags(LIMITS)).containsExactly(new Flag.AmountNotKnown(unknown));
    assertThat(log.inLastHour(minute(5))).isEqualTo(mcg(0));
  }

  /** 1,000 mcg/mL is what one ampoule in 10 mL holds: row G008. */
  @Test
  void a_dose_out_of_the_syringe_of_the_first_step_is_flagged() {
    var strong =
        new Given(
            Optional.of(mcg(500)),
            Optional.of(Concentration.parse("1 mg/mL").orThrow()),
            minute(0),
            Side.LEFT);
    var ready =
        new Given(
            Optional.of(mcg(500)),
            Optional.of(Concentration.parse("500 mcg/mL").orThrow()),
            minute(0),
            Side.LEFT);

    assertThat(NOTHING.with(strong).flags(LIMITS))
        .containsExactly(new Flag.TooStrong(strong, Concentration.parse("1000 mcg/mL").orThrow()));
    assertThat(NOTHING.with(ready).flags(LIMITS)).isEmpty();
  }

  @Test
  void the_same_dose_written_twice_counts_twice() {
    RescueLog log = NOTHING.with(given(200, 0)).with(given(200, 0));

    assertThat(log.inLastHour(minute(1))).isEqualTo(mcg(400));
  }

  /** Rows G019, G021 and G023 to G026, by letting the log itself say when it is full. */
  @Test
  void the_sum_of_an_hour_is_full_when_the_arithmetic_of_the_limits_says_so() {
    for (long dose : List.of(100L, 200L, 250L, 300L, 500L)) {
      for (long every : List.of(3L, 5L)) {
        RescueLog log = NOTHING;
        long minute = 0;
        while (ask(log(log.given(), List.of(minute(minute))), dose, minute(minute))
            instanceof LogVerdict.Allowed) {
          log = log.with(given(dose, minute));
          minute += every;
        }
        assertThat(log.given()).hasSize((int) LIMITS.dosesWithin(mcg(dose)));
        assertThat(LIMITS.lastAfter(mcg(dose), TimeSpan.ofMinutes(every)))
            .isEqualTo(TimeSpan.ofMinutes(minute - every));
      }
    }
    assertThat(LIMITS.lastAfter(mcg(1_000), TimeSpan.ofMinutes(5)))
        .as("one dose is the whole sum")
        .isEqualTo(new TimeSpan(0));
    assertThatThrownBy(() -> LIMITS.lastAfter(mcg(1_001), TimeSpan.ofMinutes(5)))
        .hasMessageStartingWith("bug:");
  }

  /** A dose in whole seconds and micrograms. */
  private record Plain(long second, long dose) {}

  private static List<Plain> some(Random random) {
    return Stream.generate(
            () -> new Plain(30L * random.nextInt(160), 50L * (1 + random.nextInt(10))))
        .limit(random.nextInt(8))
        .toList();
  }

  /** The window and the interval restated in whole seconds, for logs at random in any order. */
  @Test
  void the_hour_and_the_interval_are_those_of_a_plain_restatement() {
    var random = new Random(SEED);
    var seen = new HashMap<Class<?>, Integer>();
    for (int i = 0; i < 20_000; i++) {
      List<Plain> doses = some(random);
      long at = 30L * random.nextInt(200);
      long dose = 100 + 50L * random.nextInt(9);
      RescueLog log =
          log(
              doses.stream()
                  .map(one -> given(one.dose(), START.plusSeconds(one.second())))
                  .toList(),
              List.of(START.plusSeconds(at)));
      LogVerdict verdict = ask(log, dose, START.plusSeconds(at));
      seen.merge(verdict.getClass(), 1, Integer::sum);

      long sum = dose;
      for (Plain one : doses) {
        sum += one.second() >= at - 3_600 && one.second() <= at ? one.dose() : 0;
      }
      boolean isTooSoon = doses.stream().anyMatch(one -> at < one.second() + 180);
      String named = "seed " + SEED + " case " + i;
      assertThat(verdict instanceof LogVerdict.Refused).as(named).isEqualTo(isTooSoon);
      if (!isTooSoon) {
        assertThat(verdict)
            .as(named)
            .isEqualTo(
                sum > 1_000
                    ? new LogVerdict.Hold(
                        mcg(sum), List.of(new Reason.OverLimit(mcg(sum), mcg(1_000))))
                    : new LogVerdict.Allowed(mcg(sum)));
      }
    }
    assertThat(seen).hasSize(3);
    assertThat(seen.values()).allMatch(count -> count > 500);
  }
}
