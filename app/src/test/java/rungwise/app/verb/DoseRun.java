package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;

/** What came of one run of the dose verb. */
record DoseRun(int status, List<String> out, List<String> err) {

  static final String THREE_DRUG = "three-drug-30-1-10";

  static DoseRun dose(String... options) {
    var out = new StringWriter();
    var err = new StringWriter();
    var arguments = new String[options.length + 1];
    arguments[0] = "dose";
    System.arraycopy(options, 0, arguments, 1, options.length);

    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute(arguments);

    return new DoseRun(status, out.toString().lines().toList(), err.toString().lines().toList());
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
