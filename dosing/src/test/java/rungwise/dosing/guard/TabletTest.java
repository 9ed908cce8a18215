package rungwise.dosing.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static rungwise.dosing.LabelWorld.START;
import static rungwise.dosing.LabelWorld.minutes;
import static rungwise.dosing.LabelWorld.ml;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.dosing.Dosing;
import rungwise.dosing.LabelWorld;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;

/** A tablet for erections before an injection. How many hours is common practice, no source. */
final class TabletTest {

  private static final Instant TAKEN = START.plus(Duration.ofDays(10));

  private static LabelWorld tookOne() {
    return new LabelWorld().injected("0.25", Grade.USABLE, minutes(40)).tookTablet(TAKEN);
  }

  private static List<GuardRule> blocks(Instant now, Place place) {
    var signed = new SignedDose(ml("0.25"), place, Set.of(), Optional.empty());
    return Dosing.mayInject(tookOne().at(now).question(), Optional.of(signed)).blocks().stream()
        .map(Verdict::rule)
        .toList();
  }

  @Test
  void it_holds_until_the_clinics_hours_are_over_and_not_a_millisecond_longer() {
    int hours = LabelWorld.protocol().limits().pde5Hours().value();
    Instant over = TAKEN.plus(Duration.ofHours(hours));
    for (Place place : Place.values()) {
      assertThat(blocks(TAKEN, place)).containsExactly(GuardRule.PDE5_HOURS);
      assertThat(blocks(over.minusMillis(1), place)).containsExactly(GuardRule.PDE5_HOURS);
      assertThat(blocks(over, place)).isEmpty();
    }
  }

  @Test
  void it_says_when_it_clears_and_shows_the_protocols_own_source() {
    var hours = LabelWorld.protocol().limits().pde5Hours();
    Question question = tookOne().at(TAKEN).question();
    Verdict verdict = OwnSources.of(question, TimeGuards.ask(question)).getFirst();

    assertThat(verdict.clears())
        .isEqualTo(new Clears.At(TAKEN.plus(Duration.ofHours(hours.value()))));
    assertThat(verdict.source()).isEqualTo(hours.source());
  }
}
