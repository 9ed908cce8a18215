package rungwise.checks.adversary;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.checks.adversary.law.Law;

/**
 * Records at random against the rules that never bend. Many more by one command: {@code ./check
 * adversary}.
 */
final class AdversaryTest {

  private static final int FEW = 400;
  private static final int MANY = Integer.getInteger("rungwise.records", 10_000);
  private static final int THREADS = 2;

  /** Below this a law was as good as never tried. */
  private static final int LEAST_LOOKS = 50;

  @Test
  void no_record_of_a_few_breaks_a_law() {
    Adversary.Run run = Adversary.run(FEW, /* firstSeed= */ 1, THREADS, Law.AWAITED);

    assertThat(run.found()).isEmpty();
  }

  @Test
  @Tag("long")
  void no_record_of_many_breaks_a_law_and_every_law_could_have_been_broken() {
    Adversary.Run run = Adversary.run(MANY, /* firstSeed= */ 1_000_000, THREADS, Law.AWAITED);
    System.out.println(run.table());

    assertThat(run.found()).isEmpty();
    assertThat(Arrays.stream(Law.values()))
        .allSatisfy(law -> assertThat(run.judge().looked(law)).isGreaterThan(LEAST_LOOKS));
  }
}
