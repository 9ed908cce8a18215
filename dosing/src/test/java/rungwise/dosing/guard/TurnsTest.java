package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.ALPROSTADIL_20_LABEL;
import static rungwise.dosing.LabelWorld.FRESH;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.supply.VialEnd;

/** Between two turns nothing that a guard says changes. */
final class TurnsTest {

  private static final Instant LAST = START.plus(Duration.ofDays(6));
  private static final Instant END = START.plus(Duration.ofDays(3 * 365));

  /** Four doses in a week, two of them in one visit, and then nothing for years. */
  private static LabelWorld world() {
    return new LabelWorld()
        .injectedAt(START, ml("0.12"), ml("0.12"), Grade.NONE, minutes(20), SimpleCauses.NONE_FOUND)
        .injectedAt(
            START.plus(Duration.ofMinutes(50)),
            ml("0.25"),
            ml("0.25"),
            Grade.USABLE,
            minutes(40),
            SimpleCauses.NONE_FOUND)
        .injectedAt(
            START.plus(Duration.ofDays(3)),
            ml("0.25"),
            ml("0.25"),
            Grade.USABLE,
            minutes(40),
            SimpleCauses.NONE_FOUND)
        .injectedAt(
            LAST, ml("0.25"), ml("0.25"), Grade.USABLE, minutes(40), SimpleCauses.NONE_FOUND)
        .screened(Screening.all(Answer.NO, START.minus(Duration.ofDays(5))))
        .examined(Optional.of(START))
        .tookTablet(LAST.plus(Duration.ofHours(30)))
        .holding(
            new VialInHand(
                FRESH,
                new VialInHand.Label(ALPROSTADIL_20_LABEL),
                VialEnd.byLabel(START.plus(Duration.ofDays(200)))));
  }

  /** At home in spite of an examination that is long overdue, up to a date. */
  private static SignedDose signed() {
    Set<OverriddenHold> overridden = Set.of();
    for (Verdict verdict :
        Dosing.raisedBy(
            world().at(START.plus(Duration.ofDays(150))).question(), ml("0.25"), Place.HOME)) {
      if (verdict.rule() == GuardRule.EXAMINATION_LONG_OVERDUE) {
        var until = Optional.of(START.plus(Duration.ofDays(170)));
        overridden = Set.of(new OverriddenHold(verdict.rule(), verdict.facts(), until));
      }
    }
    assertThat(overridden).isNotEmpty();
    return new SignedDose(ml("0.25"), Place.HOME, overridden, Optional.empty());
  }

  private static List<GuardRule> blocks(Instant at, SignedDose signed) {
    return Dosing.mayInject(world().at(at).question(), Optional.of(signed)).blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  /** The same with nothing overridden, so that the examination shows when it is long overdue. */
  static List<SignedDose> doses() {
    return List.of(signed(), new SignedDose(ml("0.25"), Place.HOME, Set.of(), Optional.empty()));
  }

  @ParameterizedTest
  @MethodSource("doses")
  void nothing_changes_between_two_turns_and_every_wait_ends_at_one(SignedDose signed) {
    List<Instant> turns =
        Dosing.turns(world().at(LAST).question(), Optional.of(signed)).stream()
            .filter(turn -> turn.isAfter(LAST) && turn.isBefore(END))
            .sorted()
            .distinct()
            .toList();
    var met = EnumSet.noneOf(GuardRule.class);
    Instant from = LAST;
    List<GuardRule> before = blocks(from, signed);
    int changes = 0;
    for (Instant turn : turns) {
      List<GuardRule> said = blocks(from, signed);
      Instant middle = from.plus(Duration.between(from, turn).dividedBy(2));
      assertThat(blocks(middle, signed)).as("between %s and %s", from, turn).isEqualTo(said);
      assertThat(blocks(turn.minusMillis(1), signed)).as("just before %s", turn).isEqualTo(said);
      met.addAll(said);
      changes += said.equals(before) ? 0 : 1;
      before = said;
      from = turn;
    }
    met.addAll(blocks(from, signed));
    assertThat(blocks(END, signed)).isEqualTo(blocks(from, signed));
    assertThat(changes).isGreaterThanOrEqualTo(6);
    assertThat(met)
        .contains(
            GuardRule.SPACING,
            GuardRule.WEEKLY_COUNT,
            GuardRule.PDE5_HOURS,
            GuardRule.EXAMINATION_LONG_OVERDUE,
            GuardRule.SCREENING_EXPIRED,
            GuardRule.LAPSED,
            GuardRule.VIAL_PAST_DATE);
  }
}
