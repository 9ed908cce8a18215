package rungwise.app.verb;

import java.io.IOException;
import java.io.PrintWriter;
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
import rungwise.app.forecast.ForecastAnswer;
import rungwise.app.forecast.ForecastJson;
import rungwise.app.forecast.ForecastRequest;
import rungwise.app.forecast.ForecastText;
import rungwise.app.history.FaultList;
import rungwise.app.history.HistorySource;
import rungwise.app.server.WrongUse;
import rungwise.files.ShippedPopulations;

/** Says what each volume may do for each patient of a history file. */
@Command(
    name = "forecast",
    description = {
      "Say what each volume may do for each patient of a history file, by the response model.",
      "No safety checks are made: the guards ask them where a dose is signed."
    },
    footer = {
      "",
      "rungwise forecast history.csv",
      "rungwise forecast history.csv.gz --population clinic.json --volumes 0.05:0.5:0.05 --json",
      "rungwise forecast history.csv --volumes 0.1,0.2 --delivery u100-0.5 --lost 0.1",
      "rungwise forecast --group spinal_cord --json",
      "",
      "An erection of 4 hours: emergency department at once, whatever a label says.",
      "For everything else local protocols and the product's label come first."
    },
    mixinStandardHelpOptions = true)
final class ForecastVerb implements Callable<Integer> {

  private static final String ONE = "1";

  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "The history: a .csv or .csv.gz file, or - for standard input.")
  private @Nullable Path history;

  @Option(
      names = "--group",
      paramLabel = "NAME",
      description =
          "Instead of a history: a man of this group of the population before his first injection.")
  private @Nullable String group;

  @Option(
      names = "--population",
      description =
          "A population file (JSON), or the name of one that comes with the program. Without it:"
              + " alprostadil-published.")
  private String population = ShippedPopulations.DEFAULT;

  @Option(
      names = "--volumes",
      description = "From, to and step in mL, or volumes with commas between.")
  private String volumes = "0.05:0.5:0.05";

  @Option(
      names = "--potency",
      description = "What is left of the label's strength: 1 if not given.")
  private String potency = ONE;

  @Option(
      names = "--strength",
      description = "The strength relative to the population's preparation: 1 if not given.")
  private String strength = ONE;

  @Option(
      names = "--delivery",
      paramLabel = "SYRINGE",
      description = {
        "Average over what may be delivered with this syringe, such as u100-0.5, and show the",
        "error budget: half a graduation, tolerance of barrel and label, and what --lost says."
      })
  private @Nullable String delivery;

  @Option(
      names = "--lost",
      description =
          "With --delivery: the largest part of the strength that time and warmth may have taken,"
              + " such as 0.1. Without it: 0.")
  private @Nullable String lost;

  @Option(
      names = "--preparation",
      paramLabel = "NAMES",
      description = {
        "Read the lines of these preparations alone, by the names in the file with commas between:",
        "the population's, and strengths of it. Without it: every line must be of the population's."
      })
  private @Nullable String preparations;

  @Option(
      names = "--despite-doubts",
      description = "Use a population that its own maker doubts; the exit status is then 3.")
  private boolean isDespiteDoubts;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() throws IOException {
    if ((history == null) == (group == null)) {
      throw new WrongUse(
          "Give either a history, a .csv or .csv.gz file, or --group with the name of a group.");
    }
    var request =
        new ForecastRequest(
            Optional.ofNullable(history).map(typed -> HistorySource.of(typed, System.in)),
            Optional.ofNullable(group),
            population,
            volumes,
            potency,
            strength,
            Optional.ofNullable(delivery),
            Optional.ofNullable(lost),
            Optional.ofNullable(preparations),
            isDespiteDoubts);
    var reading = request.answer();
    PrintWriter out = spec.commandLine().getOut();
    if (reading.found().isEmpty()) {
      new FaultList(reading.placed()).tell(isJson, out, spec.commandLine().getErr());
      return ExitCode.USAGE;
    }
    ForecastAnswer answer = reading.orThrow();
    if (isJson) {
      out.println(ForecastJson.of(answer));
    } else {
      ForecastText.of(answer).forEach(out::println);
    }
    out.flush();
    return answer.doubts().isEmpty() ? ExitCode.OK : RungwiseCommand.NOT_TO_BE_RELIED_ON;
  }
}
