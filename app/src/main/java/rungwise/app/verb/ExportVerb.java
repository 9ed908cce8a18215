package rungwise.app.verb;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.WrongUse;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.past.PastHistory;
import rungwise.files.JsonObject;
import rungwise.files.history.HistoryFileWriter;
import rungwise.files.record.RecordFileWriter;
import rungwise.files.record.RecordFileWriter.Scope;
import rungwise.store.database.DataFolder;

/** Writes the record, or one course of it, into a file. */
@Command(
    name = "export",
    description = {
      "Write the record, or one course of it, into a file.",
      "It reads only, and may be run while serve is using the folder."
    },
    footer = {
      "",
      "A name that ends in .json gives a record file: everything, with who and when. It can be"
          + " imported into an empty data folder. Its form is in docs/record-file.md.",
      "A name that ends in .csv or .csv.gz gives a history file: each injection on record, one a"
          + " line, for the model and for spreadsheets.",
      "The file names patients: keep it as the record itself is kept."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {"0:done", "1:the program failed", "2:wrong use, such as no such course"},
    mixinStandardHelpOptions = true)
final class ExportVerb implements Callable<Integer> {

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
      paramLabel = "FILE",
      description = "File to write: its name ends in .json, .csv or .csv.gz. It must not exist.")
  private Path target = Path.of("");

  @Option(
      names = "--course",
      paramLabel = "NUMBER",
      description = "The record number of the one man whose course is wanted.")
  private @Nullable String course;

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean isJson;

  @Override
  public Integer call() throws IOException {
    String name = target.toString().toLowerCase(Locale.ROOT);
    boolean isRecord = name.endsWith(".json");
    if (!isRecord && !name.endsWith(".csv") && !name.endsWith(".csv.gz")) {
      throw new WrongUse(
          "--to " + target + " says no form: let the name end in .json, .csv or .csv.gz.");
    }
    if (Files.exists(target)) {
      throw new WrongUse("There is a file " + target + " already: name another one.");
    }
    Path draft = target.resolveSibling(target.getFileName() + ".part");
    try (OpenClinic clinic = OpenClinic.toRead(data, InstantSource.system())) {
      Optional<CourseId> one = courseIn(clinic);
      long count;
      DataFolder.createForOwner(draft);
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(draft))) {
        count = isRecord ? record(clinic, one, out) : histories(clinic, one, name, out);
      }
      Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
      print(count, isRecord);
      return ExitCode.OK;
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  private Optional<CourseId> courseIn(OpenClinic clinic) {
    if (course == null) {
      return Optional.empty();
    }
    List<CourseFile> found = clinic.coursesOf(course);
    if (found.size() == 1) {
      return Optional.of(found.getFirst().id());
    }
    throw new WrongUse(
        found.isEmpty()
            ? "--course \"" + course + "\": no course is of that record number."
            : "--course \"" + course + "\": several courses are of that record number.");
  }

  private static long record(OpenClinic clinic, Optional<CourseId> one, OutputStream out) {
    long[] count = new long[1];
    try (var file = new RecordFileWriter(out, one.isPresent() ? Scope.COURSE : Scope.RECORD)) {
      one.ifPresentOrElse(
          id -> count[0] = clinic.carrying().course(id, file::write),
          () ->
              clinic
                  .carrying()
                  .whole(
                      entry -> {
                        file.write(entry);
                        count[0]++;
                      }));
    }
    return count[0];
  }

  private static long histories(
      OpenClinic clinic, Optional<CourseId> one, String name, OutputStream out) throws IOException {
    List<PastHistory> found =
        clinic.histories(file -> one.map(file.id()::equals).orElse(/* other= */ true));
    if (name.endsWith(".gz")) {
      var packed = new GZIPOutputStream(out);
      HistoryFileWriter.write(found, packed);
      packed.finish();
    } else {
      HistoryFileWriter.write(found, out);
    }
    return found.stream().mapToLong(history -> history.injections().size()).sum();
  }

  private void print(long count, boolean isRecord) {
    PrintWriter out = spec.commandLine().getOut();
    String what = isRecord ? "entries" : "injections";
    out.println(
        isJson
            ? JsonObject.empty()
                .with("file", target.toString())
                .with(what, (double) count)
                .toString()
            : "%s holds %d %s.".formatted(target, count, what));
    out.flush();
  }
}
