package rungwise.app.verb;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rungwise.app.history.FaultList;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.TemporaryFolder;
import rungwise.app.server.WrongUse;
import rungwise.clinic.past.ImportPlan;
import rungwise.clinic.past.PastHistory;
import rungwise.files.JsonObject;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.HistorySurvey;
import rungwise.files.record.RecordFileReader;
import rungwise.quantities.Fault;

/** Reads a record file or a history file into a data folder. */
@Command(
    name = "import",
    description = {
      "Read a record file into an empty data folder, or a history file into a record.",
      "Without --commit nothing is written: every fault is told with its line."
    },
    footer = {
      "",
      "A record file (.json) is taken in whole or not at all. Passwords are not in it: --code-for"
          + " prints a one-time code with which an administrator sets one.",
      "A history file (.csv, .csv.gz) may have faults: a patient with a fault in any line is set"
          + " aside whole. The others count for the course of that record number, whether it is"
          + " open now or later.",
      "A patient without time, preparation and barrel in each line becomes history only: he may not"
          + " inject before a report of his last injection and an order are entered.",
      "--undo takes an import back; it stays on record and no longer counts. Of what it said, an"
          + " emergency goes on stopping and a closed dose stays closed until a prescriber confirms"
          + " on the course that it was wrong."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:done, or nothing is wrong with the file",
      "1:the program failed",
      "2:wrong use or bad input; with --commit, nothing was brought in"
    },
    mixinStandardHelpOptions = true)
final class ImportVerb implements Callable<Integer> {

  private static final int PATIENTS_BETWEEN_SIGNS = 500;
  private static final int LONGEST_SOURCE = 200;

  /** Put here by the command line before the verb is called. */
  @Spec private CommandSpec spec = CommandSpec.create();

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "The file to read.")
  private @Nullable Path file;

  @Option(
      names = "--data",
      required = true,
      paramLabel = "FOLDER",
      description = "Folder that holds all data of the clinic. Stop serve first.")
  private Path data = Path.of("");

  @Option(names = "--commit", description = "Write what is right; else only look.")
  private boolean isCommit;

  @Option(
      names = "--code-for",
      paramLabel = "NAME",
      description = "After a record file: the sign-in name of an administrator of that record.")
  private @Nullable String codeFor;

  @Option(names = "--undo", paramLabel = "ID", description = "Take the import of this id back.")
  private @Nullable String undo;

  @Option(names = "--reason", paramLabel = "TEXT", description = "Why it is taken back.")
  private String reason = "";

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() throws IOException {
    if ((file == null) == (undo == null)) {
      throw new WrongUse("Name either a file to import, or the import to --undo.");
    }
    if (undo != null) {
      return takeBack(undo);
    }
    Path given = file == null ? Path.of("") : file;
    String name = given.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".json")) {
      return takeInRecord(given);
    }
    if (name.endsWith(".csv") || name.endsWith(".csv.gz")) {
      return bringInHistories(given);
    }
    throw new WrongUse(
        "The name " + given + " says no form: it must end in .json, .csv or .csv.gz.");
  }

  private int takeInRecord(Path from) throws IOException {
    if (!isCommit) {
      try (TemporaryFolder trial = TemporaryFolder.make();
          OpenClinic clinic = OpenClinic.in(trial.path(), InstantSource.system())) {
        return tellRecord(takenIn(clinic, from), /* code= */ "");
      }
    }
    try (OpenClinic clinic = OpenClinic.in(data, InstantSource.system())) {
      long count = takenIn(clinic, from);
      return tellRecord(count, codeFor == null ? "" : code(clinic, codeFor));
    }
  }

  private static long takenIn(OpenClinic clinic, Path from) throws IOException {
    try (var in = new RecordFileReader(new BufferedInputStream(Files.newInputStream(from)))) {
      return clinic.carrying().takeIn(() -> in);
    } catch (NoSuchFileException e) {
      throw noFile(from, e);
    }
  }

  private static WrongUse noFile(Path from, Exception cause) {
    return new WrongUse("There is no file " + from + ": give the path of a file.", cause);
  }

  /** Whoever may read the data folder may make the first administrator, and so may do this. */
  private static String code(OpenClinic clinic, String name) {
    return clinic.people().list().stream()
        .filter(account -> account.signInName().text().equals(name))
        .findFirst()
        .flatMap(account -> clinic.people().newCode(account.id(), account.id()).found())
        .map(invitation -> invitation.code().text())
        .orElseThrow(
            () ->
                new WrongUse(
                    "The record was taken in, but \""
                        + name
                        + "\" is no active administrator in it, so no code was made."));
  }

  private int tellRecord(long entries, String code) {
    JsonObject object =
        JsonObject.empty().with("committed", isCommit).with("entries", (double) entries);
    String words =
        isCommit
            ? "The record was taken in: %d entries, sealed anew.".formatted(entries)
            : "Nothing is wrong with the file: %d entries. Nothing was written: add --commit."
                .formatted(entries);
    return code.isEmpty()
        ? print(object, words)
        : print(object.with("one_time_code", code), words + " One-time code: " + code);
  }

  private int bringInHistories(Path from) throws IOException {
    HistorySurvey survey;
    try {
      survey = HistoryFile.survey(from);
    } catch (NoSuchFileException e) {
      throw noFile(from, e);
    }
    List<PastHistory> read = survey.histories();
    try (OpenClinic clinic =
        isCommit
            ? OpenClinic.in(data, InstantSource.system())
            : OpenClinic.toRead(data, InstantSource.system())) {
      ImportPlan plan = clinic.pastImports().plan(read);
      FaultList faults =
          new FaultList(
              Stream.concat(survey.placed().stream(), plan.faults().stream().map(Fault::ofForm))
                  .toList());
      PrintWriter err = spec.commandLine().getErr();
      faults.words().forEach(err::println);
      err.flush();
      String id =
          isCommit && !plan.ready().isEmpty()
              ? clinic.pastImports().commit(plan, sourceName(from), count -> sign(count, plan))
              : "";
      tellHistories(plan, faults, survey.aside() + plan.aside(), id);
      boolean isDone = isCommit ? !id.isEmpty() : faults.faults().isEmpty();
      return isDone ? ExitCode.OK : ExitCode.USAGE;
    }
  }

  private static String sourceName(Path from) {
    String name = String.valueOf(from.getFileName());
    return name.length() > LONGEST_SOURCE ? name.substring(0, LONGEST_SOURCE) : name;
  }

  private void sign(int done, ImportPlan plan) {
    if (done % PATIENTS_BETWEEN_SIGNS == 0 || done == plan.ready().size()) {
      PrintWriter err = spec.commandLine().getErr();
      err.printf("%d of %d patients%n", done, plan.ready().size());
      err.flush();
    }
  }

  private void tellHistories(ImportPlan plan, FaultList faults, int aside, String id) {
    JsonObject object =
        faults.in(
            JsonObject.empty()
                .with("committed", !id.isEmpty())
                .with("import", id)
                .with("patients", (double) plan.ready().size())
                .with("injections", (double) plan.injections())
                .with("history_only", (double) plan.historyOnly())
                .with("set_aside", (double) aside));
    String counts =
        "%d patients with %d injections, %d of them history only; %d set aside for a fault."
            .formatted(plan.ready().size(), plan.injections(), plan.historyOnly(), aside);
    print(
        object,
        id.isEmpty()
            ? counts + " Nothing was written" + (isCommit ? "." : ": add --commit.")
            : counts + " Brought in as import " + id + "; --undo takes it back.");
  }

  private int takeBack(String id) {
    try (OpenClinic clinic = OpenClinic.in(data, InstantSource.system())) {
      var outcome = clinic.pastImports().undo(id, reason);
      int count =
          outcome
              .found()
              .orElseThrow(
                  () -> new WrongUse(String.join(System.lineSeparator(), outcome.faults())));
      return print(
          JsonObject.empty().with("undone", id).with("patients", (double) count),
          ("Import %s no longer counts: %d patients. It stays on record. What it stopped or closed"
                  + " waits for a prescriber on each course.")
              .formatted(id, count));
    }
  }

  private int print(JsonObject object, String words) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(isJson ? object.toString() : words);
    out.flush();
    return ExitCode.OK;
  }
}
