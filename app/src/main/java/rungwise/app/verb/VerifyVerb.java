package rungwise.app.verb;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;

/** Checks that nothing on record was changed, removed or added by another program. */
@Command(
    name = "verify",
    description = {
      "Check that every entry of the record is as it was sealed.",
      "It reads only, and may be run while serve is using the folder."
    },
    footer = {
      "",
      "Found are: a changed byte, an entry removed, added or moved, and an end that was cut off.",
      "Not found is an older copy of the whole folder that was put back, unless a seal that was"
          + " kept elsewhere is given: each backup has one in its head.txt."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:the record is whole",
      "1:the record is broken, or the program failed",
      "2:wrong use, such as a folder without a record or a key"
    },
    mixinStandardHelpOptions = true)
final class VerifyVerb implements Callable<Integer> {

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--data",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder that holds all data of the clinic.")
  private Path data = Path.of("");

  @Mixin private KeptEnd keptEnd = new KeptEnd();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() {
    Inspected found = RecordCheck.of(data, keptEnd.seal());
    PrintWriter out = spec.commandLine().getOut();
    out.println(isJson ? VerifyText.json(found).toString() : VerifyText.words(found));
    out.flush();
    return switch (found) {
      case Inspected.Whole whole -> ExitCode.OK;
      case Inspected.Broken broken -> ExitCode.SOFTWARE;
    };
  }
}
