package rungwise.app.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.files.history.CourseFile;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.HistoryFileWriter;
import rungwise.files.history.HistorySurvey;
import rungwise.files.history.PreparationChoice;

/** A history file, packed where it begins as a packed one does. */
final class HistoryFiles implements Target.Reader {

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
          + "duration_upper_min,time,preparation,barrel\n";

  static final List<String> SEEDS =
      List.of(
          HEADER
              + "P-1,vasculogenic,1,0.2,1,1,3,45,exact,,2026-03-01T21:30:00+01:00,"
              + "alprostadil-20,u100-1\n"
              + "P-1,vasculogenic,2,0.2,0.95,1,2,,none,,,,\n"
              + "\"P, 2\",unknown,1,0.15,1.2,0.5,4,30,interval,60,,,\n",
          HEADER + "P-1,mixed,1,0.2,1,1,3,45.123456,right,,,alprostadil-20,\n",
          "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
              + "duration_upper_min\r\n'=1,mixed,1,0.2,1,1,1,,none,\r\n",
          "\uFEFF" + HEADER + "a,mixed,1,0.20,1.0,1e0,5,5,exact,,,,\n\n",
          HEADER + "\"a\"\"b\",mixed,1,0.2,1,1,3,45,exact,,,,\n\"open,mixed",
          HEADER + "a,mixed,1,0.2,1,1,3,45,exact,,,,\na,unknown,1,0.2,1,1,3,45,exact,,,,");

  private static final PreparationChoice ANY = new PreparationChoice(List.of(), Optional.empty());
  private static final int PACKED = 0x1F;

  private final Path plain;
  private final Path packed;

  HistoryFiles() {
    try {
      Path folder = Files.createTempDirectory("history");
      plain = folder.resolve("a.csv");
      packed = folder.resolve("a.csv.gz");
      plain.toFile().deleteOnExit();
      packed.toFile().deleteOnExit();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void read(byte[] input) {
    Path file = input.length > 0 && input[0] == PACKED ? packed : plain;
    var whole = Hold.sound(HistoryFile.read(file.toString(), input));
    HistorySurvey survey = HistoryFile.survey(file.toString(), input);
    Hold.that(
        !survey.lines().isEmpty() || !survey.faults().isEmpty(), () -> "neither lines nor faults");
    Hold.that(
        whole.found().isPresent() || !survey.faults().isEmpty(),
        () -> "refused whole, and sound line by line");
    if (survey.faults().isEmpty()) {
      readsBack(survey.histories());
    }
    readForTheFit(file, input, whole.found());
  }

  private static void readsBack(List<PastHistory> histories) {
    var written = new ByteArrayOutputStream();
    HistoryFileWriter.write(histories, written);
    HistorySurvey again = HistoryFile.survey("a.csv", written.toByteArray());
    Hold.that(
        again.faults().isEmpty() && withoutLines(again.histories()).equals(withoutLines(histories)),
        () -> histories + " is written as " + written + " and read as " + again);
  }

  /** A writer puts the lines of a patient together. */
  private static List<PastHistory> withoutLines(List<PastHistory> histories) {
    return histories.stream()
        .map(
            one ->
                new PastHistory(
                    one.patient(),
                    one.group(),
                    one.injections().stream().map(HistoryFiles::withoutLine).toList()))
        .toList();
  }

  private static PastInjection withoutLine(PastInjection one) {
    return new PastInjection(
        0,
        one.number(),
        one.volume(),
        one.potency(),
        one.strength(),
        one.grade(),
        one.soft(),
        one.setting(),
        one.named());
  }

  /** The quick reader for the fit reads what the other reads. */
  private void readForTheFit(Path file, byte[] input, Optional<HistoryFile> read) {
    try {
      Files.write(file, input);
      var courses = Hold.sound(CourseFile.read(file, ANY));
      Hold.that(
          courses.found().isEmpty() || read.isPresent(),
          () -> "read for the fit, and refused else");
      courses
          .found()
          .ifPresent(
              found ->
                  Hold.that(
                      found.courses().trials() + found.leftOut()
                          == read.orElseThrow().lines().size(),
                      () -> "another number of injections for the fit"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
