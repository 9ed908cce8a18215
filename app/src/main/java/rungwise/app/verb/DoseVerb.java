package rungwise.app.verb;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.dose.DoseJson;
import rungwise.app.dose.DoseRequest;
import rungwise.app.dose.DoseText;
import rungwise.app.server.WrongUse;
import rungwise.clinic.dose.DoseAnswer;

/** Works out what a line of a syringe holds. */
@Command(
    name = "dose",
    description = {
      "Work out what a line of a syringe holds, or which line holds a content.",
      "The volume comes first, then the mark, then composition and content."
    },
    footer = {
      "",
      "rungwise dose --preparation three-drug-30-1-10 --barrel u100-0.5 --volume 0.2mL",
      "rungwise dose --composition \"alprostadil=20 mcg/mL\" --barrel u100-0.3 --mark 12",
      "",
      "An erection of 4 hours: emergency department at once, whatever a label says.",
      "For everything else local protocols and the product's label come first."
    },
    mixinStandardHelpOptions = true)
final class DoseVerb implements Callable<Integer> {

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(names = "--preparation", description = "A sample preparation, by its token.")
  private @Nullable String preparation;

  @Option(
      names = "--composition",
      description = "A preparation written out, such as \"alprostadil=20 mcg/mL\".")
  private @Nullable String composition;

  @Option(names = "--barrel", description = "The syringe, by its token, such as u100-0.5.")
  private @Nullable String barrel;

  @Option(names = "--volume", description = "The volume, such as 0.2mL.")
  private @Nullable String volume;

  @Option(names = "--mark", description = "The number of a unit line instead, such as 20.")
  private @Nullable String mark;

  @Option(
      names = "--content",
      description =
          "A content instead, such as alprostadil=2.5mcg; its volume is rounded down to a line.")
  private @Nullable String content;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() {
    DoseAnswer answer = answer();
    PrintWriter out = spec.commandLine().getOut();
    if (isJson) {
      out.println(DoseJson.of(answer));
    } else {
      DoseText.of(answer).forEach(out::println);
    }
    out.flush();
    return ExitCode.OK;
  }

  private DoseAnswer answer() {
    var request =
        new DoseRequest(
            Optional.ofNullable(preparation),
            Optional.ofNullable(composition),
            Optional.ofNullable(barrel),
            Optional.ofNullable(volume),
            Optional.ofNullable(mark),
            Optional.ofNullable(content));
    var reading = request.answer();
    return reading
        .found()
        .orElseThrow(() -> new WrongUse(String.join(System.lineSeparator(), reading.faults())));
  }
}
