package rungwise.checks.bytes;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

final class ChangedBytesTest {

  private static final int CHANGES = 200;
  private static final long SEED = 20261130;

  @Test
  void no_byte_that_is_changed_is_served_as_truth() {
    ChangedBytes.Run run = new ChangedBytes(WholeRecord.told()).run(CHANGES, SEED);

    System.out.println(run.table(CHANGES + " bytes changed, seed " + SEED));
    assertThat(run.failed()).isEmpty();
    assertThat(run.counts().get(Outcome.TOLD_AT_THE_LOOK)).isGreaterThan(CHANGES / 20);
  }
}
