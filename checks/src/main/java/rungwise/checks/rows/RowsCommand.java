package rungwise.checks.rows;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rungwise.quantities.Reading;

/**
 * Judges the product by a file of reference rows: one line for each row that failed or was skipped,
 * and a closing line. Exit status 0 when none failed, 1 when some did, 2 when there is no such file
 * of rows.
 */
public final class RowsCommand {

  private static final String JSON = "--json";
  private static final String USAGE = "usage: ./check rows FILE.csv [--json]";
  private static final int NONE_FAILED = 0;
  private static final int SOME_FAILED = 1;
  private static final int WRONG_USE = 2;

  private final PrintStream out;
  private final PrintStream err;

  RowsCommand(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  public static void main(String[] arguments) {
    var out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    var err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    System.exit(new RowsCommand(out, err).run(List.of(arguments)));
  }

  int run(List<String> arguments) {
    var files = new ArrayList<>(arguments);
    boolean isJson = files.removeIf(JSON::equals);
    if (files.size() != 1 || files.getFirst().startsWith("-")) {
      err.println(USAGE);
      return WRONG_USE;
    }
    return switch (read(files.getFirst())) {
      case Reading.Refused<RowFile> refused -> {
        refused.faults().forEach(err::println);
        yield WRONG_USE;
      }
      case Reading.Read<RowFile> read -> print(read.value(), isJson);
    };
  }

  private static Reading<RowFile> read(String file) {
    try {
      return RowFile.read(Path.of(file));
    } catch (InvalidPathException e) {
      return Reading.refused("\"" + file + "\" is not a path: give the path of a CSV file.");
    }
  }

  private int print(RowFile file, boolean isJson) {
    Verdicts verdicts = Verdicts.of(file, new Judge(NotYet.committed()));
    if (isJson) {
      out.println(verdicts.json());
      err.println(verdicts.closingLine());
    } else {
      verdicts.lines().forEach(out::println);
      out.println(verdicts.closingLine());
    }
    return verdicts.hasFailures() ? SOME_FAILED : NONE_FAILED;
  }
}
