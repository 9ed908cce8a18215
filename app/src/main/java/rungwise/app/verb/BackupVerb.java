package rungwise.app.verb;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.store.backup.Backup;
import rungwise.store.backup.Copied;

/** Takes a checked copy of a data folder, also while a server uses it. */
@Command(
    name = "backup",
    description = {
      "Take a copy of the record, and read it again to its last entry.",
      "It may be run while serve is using the folder."
    },
    footer = {
      "",
      "The backup is a folder with the database and head.txt: the number and the seal of the last"
          + " entry. Keep head.txt elsewhere too, on paper if need be; verify --head compares the"
          + " record with it.",
      "The key that seals the record (journal.key in the data folder) is left out, because whoever"
          + " has both can write a false record. Keep a copy of the key apart from the backups:"
          + " without it no backup can be restored. --with-key puts it in.",
      "Passwords are in the backup as hashes only."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:the backup was taken and is whole",
      "1:the record is broken and no backup was left, or the program failed",
      "2:wrong use, such as a folder that exists already or cannot be written"
    },
    mixinStandardHelpOptions = true)
final class BackupVerb implements Callable<Integer> {

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--data",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder that holds all data of the clinic.")
  private Path data = Path.of("");

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder of the backup. It must not exist yet.")
  private Path target = Path.of("");

  @Option(names = "--with-key", description = "Put the key that seals the record in as well.")
  private boolean isWithKey;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() {
    Backup.Key key = isWithKey ? Backup.Key.PUT_IN : Backup.Key.LEFT_OUT;
    Copied copied = Backup.take(data, target, key, Instant.now());
    PrintWriter out = spec.commandLine().getOut();
    out.println(isJson ? CopiedText.json(copied).toString() : CopiedText.backup(copied, target));
    out.flush();
    return switch (copied) {
      case Copied.Kept kept -> ExitCode.OK;
      case Copied.Refused refused -> ExitCode.SOFTWARE;
    };
  }
}
