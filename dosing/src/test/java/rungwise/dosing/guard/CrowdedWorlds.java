package rungwise.dosing.guard;

import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;

/** Men with more injections than usual shortly before they are asked about. */
final class CrowdedWorlds {

  private static final Instant LATER = START.plus(Duration.ofDays(60));

  private CrowdedWorlds() {}

  static LabelWorld twoInADay() {
    return new LabelWorld()
        .injectedAt(
            LATER.minus(Duration.ofHours(23)),
            ml("0.25"),
            ml("0.25"),
            Grade.FULLER,
            minutes(20),
            SimpleCauses.NONE_FOUND)
        .injectedAt(
            LATER.minus(Duration.ofHours(2)),
            ml("0.25"),
            ml("0.25"),
            Grade.FULLER,
            minutes(20),
            SimpleCauses.NONE_FOUND);
  }

  static LabelWorld threeInAWeek() {
    var world = new LabelWorld();
    for (int day = 6; day >= 2; day -= 2) {
      world.injectedAt(
          LATER.minus(Duration.ofDays(day)),
          ml("0.25"),
          ml("0.25"),
          Grade.USABLE,
          minutes(40),
          SimpleCauses.NONE_FOUND);
    }
    return world;
  }

  static LabelWorld pair() {
    Instant first = LATER.minus(Duration.ofDays(3));
    return new LabelWorld()
        .injectedAt(
            first,
            ml("0.12"),
            ml("0.12"),
            Grade.NONE,
            new SoftAfter.NotKnown(),
            SimpleCauses.NONE_FOUND)
        .injectedAt(
            first.plus(Duration.ofMinutes(50)),
            ml("0.25"),
            ml("0.25"),
            Grade.USABLE,
            minutes(40),
            SimpleCauses.NONE_FOUND);
  }
}
