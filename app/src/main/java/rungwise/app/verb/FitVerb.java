package rungwise.app.verb;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rungwise.app.fit.DrawsFile;
import rungwise.app.fit.FitAnswer;
import rungwise.app.fit.FitRequest;
import rungwise.app.fit.FitText;
import rungwise.app.history.FaultList;
import rungwise.app.history.HistorySource;
import rungwise.app.server.WrongUse;
import rungwise.dosing.fit.Pass;
import rungwise.dosing.fit.Posterior;

/** Fits the response model to the courses of a history file. */
@Command(
    name = "fit",
    description = {
      "Fit the response model to the courses of a history file, by maximum marginal likelihood.",
      "The JSON is a population file for forecast --population. It is not signed."
    },
    footer = {
      "",
      "rungwise fit history.csv",
      "rungwise fit history.csv.gz --reference-group vasculogenic --posterior --seed 7 --json",
      "rungwise fit history.csv --check",
      "rungwise fit - --draws draws.csv --json < history.csv"
    },
    mixinStandardHelpOptions = true)
final class FitVerb implements Callable<Integer> {

  private static final int MOST_THREADS = 256;
  private static final int PLACES = 6;
  private static final int PLACES_OF_SECONDS = 3;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The history: a .csv or .csv.gz file, or - for standard input.")
  private @Nullable Path history;

  @Option(
      names = "--reference-group",
      paramLabel = "NAME",
      description = "The group that the others are compared with. Without it: the most frequent.")
  private @Nullable String reference;

  @Option(
      names = "--preparation",
      paramLabel = "NAMES",
      description = {
        "Read the lines of these preparations alone, by the names in the file with commas between,",
        "the one of strength 1 first. Without it: every line must name the same one, or none."
      })
  private @Nullable String preparations;

  @Option(
      names = "--posterior",
      description = "Tell the posterior under weak beliefs too: see docs/model-card.md.")
  private boolean hasPosterior;

  @Option(
      names = "--check",
      description = {
        "Compare each report with what the same man's earlier ones foresaw, and count how many",
        "ranges miss: see docs/model-card.md. It asks for the posterior."
      })
  private boolean hasCheck;

  @Option(
      names = "--draws",
      paramLabel = "FILE",
      description = {
        "Write the draws of the posterior into a new file: comma-separated, a line for each draw",
        "with its weight and each parameter."
      })
  private @Nullable Path draws;

  @Option(
      names = "--seed",
      description =
          "A whole number: the same seed, the same draws of the posterior. Without it: 1.")
  private long seed = 1;

  @Option(
      names = "--threads",
      description = "How many threads work; the result is the same. Without it: one a processor.")
  private int threads = Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() throws IOException {
    if (history == null) {
      throw new WrongUse("No history was given: give a .csv or .csv.gz file.");
    }
    if (threads < 1 || threads > MOST_THREADS) {
      throw new WrongUse(
          "--threads: \""
              + threads
              + "\" was given: write a whole number from 1 to 256, such as 2");
    }
    if (draws != null && Files.exists(draws)) {
      throw alreadyThere(draws);
    }
    PrintWriter err = spec.commandLine().getErr();
    var request =
        new FitRequest(
            HistorySource.of(history, System.in),
            Optional.ofNullable(preparations),
            Optional.ofNullable(reference),
            hasPosterior || draws != null,
            hasCheck,
            seed,
            threads);
    var reading = request.answer(pass -> tell(err, pass));
    PrintWriter out = spec.commandLine().getOut();
    if (reading.found().isEmpty()) {
      new FaultList(reading.placed()).tell(isJson, out, err);
      return ExitCode.USAGE;
    }
    FitAnswer answer = reading.orThrow();
    writeDraws(answer);
    err.println(times(answer));
    if (isJson) {
      out.println(answer.json());
    } else {
      FitText.of(answer).forEach(out::println);
    }
    out.flush();
    return answer.doubts().isEmpty() ? ExitCode.OK : RungwiseCommand.NOT_TO_BE_RELIED_ON;
  }

  private void writeDraws(FitAnswer answer) throws IOException {
    if (draws == null) {
      return;
    }
    Posterior posterior =
        answer
            .posterior()
            .orElseThrow(
                () ->
                    new WrongUse(
                        "--draws: there is no posterior to draw from, as no duration is known"));
    try {
      DrawsFile.write(draws, posterior.draws());
    } catch (FileAlreadyExistsException meanwhile) {
      throw alreadyThere(draws);
    }
  }

  private static WrongUse alreadyThere(Path file) {
    return new WrongUse("--draws: there is a file " + file + " already: give another name");
  }

  private static void tell(PrintWriter err, Pass pass) {
    err.println(
        switch (pass) {
          case Pass.Look look ->
              "Look "
                  + look.number()
                  + " at "
                  + look.courses()
                  + " courses: logarithm "
                  + BigDecimal.valueOf(look.log()).setScale(PLACES, RoundingMode.HALF_UP);
          case Pass.Drawn drawn ->
              "Draw " + drawn.draws() + " of at least " + drawn.atLeast() + " from the posterior";
        });
    err.flush();
  }

  /** How long it took; it is no part of the answer, so that equal requests have equal answers. */
  private static String times(FitAnswer answer) {
    String fit = "Fitted in " + seconds(answer.seconds());
    return answer
        .posterior()
        .map(
            posterior ->
                fit
                    + ", drew from the posterior in "
                    + seconds(answer.posteriorSeconds())
                    + ": "
                    + Math.round(posterior.leastEffective() / answer.posteriorSeconds())
                    + " independent draws a second at least.")
        .orElse(fit + ".");
  }

  private static String seconds(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(PLACES_OF_SECONDS, RoundingMode.HALF_UP) + " s";
  }
}
