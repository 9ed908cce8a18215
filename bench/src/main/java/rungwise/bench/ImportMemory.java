package rungwise.bench;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.TemporaryFolder;
import rungwise.files.PopulationDocuments;
import rungwise.files.PopulationFile;
import rungwise.files.ProtocolFile;
import rungwise.files.SampleProtocolReader;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.HistorySurvey;
import rungwise.files.record.RecordFileReader;
import rungwise.files.record.RecordFileWriter;

/**
 * Imports the largest file of a kind that is accepted, for a machine that is given a bound of its
 * memory: {@code java -Xmx400m ... rungwise.bench.ImportMemory history}. A bound that is too small
 * ends in {@code OutOfMemoryError}.
 */
public final class ImportMemory {

  private static final int MOST_OF_A_HISTORY = 1 << 24;
  private static final int MOST_OF_A_FORM = 256 * 1024;
  private static final int INJECTIONS = 8;
  private static final int MEGA = 1 << 20;
  private static final int MINUTES = 200;

  private ImportMemory() {}

  /** The kind, and for a record how many courses. */
  public static void main(String[] args) throws IOException {
    String told =
        switch (args.length == 0 ? "" : args[0]) {
          case "history" -> history();
          case "record" -> record(Integer.parseInt(args[1]));
          case "population" -> population();
          case "protocol" -> protocol();
          default ->
              throw new IllegalArgumentException("one of history, record N, population, protocol");
        };
    Runtime machine = Runtime.getRuntime();
    System.out.printf(
        "%s; at most %d MB were allowed, %d MB are held at the end%n",
        told, machine.maxMemory() / MEGA, (machine.totalMemory() - machine.freeMemory()) / MEGA);
  }

  private static String history() throws IOException {
    Path file = Files.createTempFile("largest", ".csv.gz");
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      int bytes = writeHistory(file);
      HistorySurvey survey = HistoryFile.survey(file);
      try (OpenClinic clinic = OpenClinic.in(folder.path(), InstantSource.system())) {
        var plan = clinic.pastImports().plan(survey.histories());
        return "history of %d bytes unpacked, %d packed: %d men read, %d faults"
            .formatted(
                bytes,
                Files.size(file),
                survey.histories().size(),
                survey.faults().size() + plan.faults().size());
      }
    } finally {
      Files.delete(file);
    }
  }

  private static int writeHistory(Path file) throws IOException {
    var random = new SplittableRandom(1);
    int bytes = 0;
    try (var out =
        new BufferedWriter(
            new OutputStreamWriter(
                new GZIPOutputStream(Files.newOutputStream(file)), StandardCharsets.UTF_8))) {
      String head =
          "patient,group,injection,volume_ml,potency,strength,grade,duration_min,"
              + "duration_status,duration_upper_min\n";
      out.write(head);
      bytes += head.length();
      for (int man = 1; ; man++) {
        var lines = new StringBuilder();
        for (int injection = 1; injection <= INJECTIONS; injection++) {
          lines
              .append("P" + man + ",vasculogenic," + injection + ",0.2,1,1,3,")
              .append(1 + random.nextInt(MINUTES))
              .append(",exact,\n");
        }
        if (bytes + lines.length() > MOST_OF_A_HISTORY) {
          return bytes;
        }
        out.write(lines.toString());
        bytes += lines.length();
      }
    }
  }

  private static String record(int courses) throws IOException {
    Path file = Files.createTempFile("record", ".json");
    try (TemporaryFolder from = TemporaryFolder.make();
        TemporaryFolder into = TemporaryFolder.make()) {
      ManyCourses.fill(from.path(), courses, /* seed= */ 1);
      try (OpenClinic clinic = OpenClinic.toRead(from.path(), InstantSource.system());
          var out =
              new RecordFileWriter(
                  new BufferedOutputStream(Files.newOutputStream(file)),
                  RecordFileWriter.Scope.RECORD)) {
        clinic.carrying().whole(out::write);
      }
      try (OpenClinic clinic = OpenClinic.in(into.path(), InstantSource.system());
          var in = new RecordFileReader(new BufferedInputStream(Files.newInputStream(file)))) {
        long entries = clinic.carrying().takeIn(() -> in);
        return "record of %d bytes: %d entries".formatted(Files.size(file), entries);
      }
    } finally {
      Files.delete(file);
    }
  }

  private static String population() {
    String shipped = new PopulationDocuments().shipped().getFirst().document().strip();
    String note = "x".repeat(MOST_OF_A_FORM - shipped.length() - 20);
    String largest = shipped.substring(0, shipped.length() - 1) + ",\"note\":\"" + note + "\"}";
    String deep = "[".repeat(MOST_OF_A_FORM);
    return "population of %d bytes: %s; %d brackets: %s"
        .formatted(
            largest.length(),
            said(PopulationFile.read(largest).found().isPresent()),
            deep.length(),
            said(PopulationFile.read(deep).found().isPresent()));
  }

  private static String protocol() {
    String sample = new SampleProtocolReader().samples().getFirst();
    String largest = sample + "\n# " + "x".repeat(MOST_OF_A_FORM - sample.length() - 3);
    String deep = "[".repeat(MOST_OF_A_FORM);
    return "protocol of %d bytes: %s; %d brackets: %s"
        .formatted(
            largest.length(),
            said(ProtocolFile.read(largest).found().isPresent()),
            deep.length(),
            said(ProtocolFile.read(deep).found().isPresent()));
  }

  private static String said(boolean isRead) {
    return isRead ? "read" : "refused";
  }
}
