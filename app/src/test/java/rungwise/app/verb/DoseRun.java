package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

/** What came of one run of the dose verb. */
record DoseRun(int status, List<String> out, List<String> err) {

  static final String THREE_DRUG = "three-drug-30-1-10";

  static DoseRun dose(String... options) {
    VerbRun run = VerbRun.of("dose", options);
    return new DoseRun(run.status(), run.out().lines().toList(), run.err());
  }

  static DoseRun sample(String barrel, String how, String what) {
    return dose("--preparation", THREE_DRUG, "--barrel", barrel, how, what);
  }

  void assertRefused(String... faults) {
    assertThat(status).isEqualTo(2);
    assertThat(out).isEmpty();
    assertThat(err).hasSameSizeAs(faults);
    for (int i = 0; i < faults.length; i++) {
      assertThat(err.get(i)).startsWith(faults[i]);
    }
  }
}
