package rungwise.app.verb;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.server.OpenClinic;
import rungwise.clinic.ClinicTime;
import rungwise.files.JsonObject;
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
          + " kept elsewhere is given: each backup has one in its head.txt.",
      "What another version of the engine said is listed by --replay, and is no fault."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:the record is whole",
      "1:the record is broken, the same engine decides otherwise today, or the program failed",
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

  @Option(
      names = "--replay",
      description = {
        "Ask every signed dose again, of the record as it was then, and list what differs.",
        "Give the --zone of serve with it."
      })
  private boolean isReplay;

  @Mixin private ZoneOption zone = new ZoneOption();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() {
    Inspected found = RecordCheck.of(data, keptEnd.seal());
    boolean isWhole = found instanceof Inspected.Whole;
    Optional<ReplayText> replay = isReplay && isWhole ? Optional.of(replay()) : Optional.empty();
    PrintWriter out = spec.commandLine().getOut();
    if (isJson) {
      JsonObject json = VerifyText.json(found);
      out.println(replay.map(text -> json.with("replay", text.json())).orElse(json));
    } else {
      out.println(VerifyText.words(found));
      replay.map(ReplayText::words).ifPresent(out::println);
    }
    out.flush();
    return isWhole && !replay.map(ReplayText::hasFault).orElse(false)
        ? ExitCode.OK
        : ExitCode.SOFTWARE;
  }

  private ReplayText replay() {
    try (OpenClinic clinic = OpenClinic.toRead(data, InstantSource.system())) {
      return new ReplayText(clinic.replays(new ClinicTime(zone.read())));
    }
  }
}
