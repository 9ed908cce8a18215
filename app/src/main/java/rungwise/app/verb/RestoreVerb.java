package rungwise.app.verb;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.store.backup.Copied;
import rungwise.store.backup.Restore;

/** Puts a backup into an empty data folder and checks it there. */
@Command(
    name = "restore",
    description = {
      "Put a backup into an empty data folder, bring it up to date and check it.",
      "The folder gets it only when every entry is as it was sealed."
    },
    footer = {
      "",
      "A folder that is not empty is refused: move a damaged record aside, and keep it.",
      "An older backup has every seal right too: give --head or --kept-seal of the last backup that"
          + " is known, and one that ends before it is refused.",
      "Sessions end and passwords stay as they were when the backup was taken."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:the record was put back and is whole",
      "1:the backup is broken or too old and nothing was put back, or the program failed",
      "2:wrong use, such as a folder that is not empty or another key"
    },
    mixinStandardHelpOptions = true)
final class RestoreVerb implements Callable<Integer> {

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--from",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder of the backup.")
  private Path backup = Path.of("");

  @Option(
      names = "--data",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder that is to hold all data of the clinic. It must exist and be empty.")
  private Path data = Path.of("");

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description = "The key that seals the record, unless it lies in the backup.")
  private @Nullable Path key;

  @Mixin private KeptEnd keptEnd = new KeptEnd();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() {
    Copied copied = Restore.into(data, backup, Optional.ofNullable(key), keptEnd.seal());
    PrintWriter out = spec.commandLine().getOut();
    out.println(isJson ? CopiedText.json(copied).toString() : CopiedText.restore(copied, data));
    out.flush();
    return switch (copied) {
      case Copied.Kept kept -> ExitCode.OK;
      case Copied.Refused refused -> ExitCode.SOFTWARE;
    };
  }
}
