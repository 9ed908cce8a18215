package rungwise.app.verb;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;

/** What came of one command line. */
record VerbRun(int status, String out, List<String> err) {

  static VerbRun of(String... arguments) {
    var out = new StringWriter();
    var err = new StringWriter();
    int status =
        RungwiseCommand.commandLine()
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute(arguments);
    return new VerbRun(status, out.toString(), err.toString().lines().toList());
  }

  /** The same of a verb and what follows it. */
  static VerbRun of(String verb, String[] options) {
    String[] arguments = new String[options.length + 1];
    arguments[0] = verb;
    System.arraycopy(options, 0, arguments, 1, options.length);
    return of(arguments);
  }
}
