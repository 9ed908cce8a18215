package rungwise.files.history;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.response.Given;
import rungwise.quantities.Reading;

/**
 * Reads a history file for the fit: what {@link HistoryFile} reads, with the same faults, in a form
 * that is small and far sooner, if every line is right.
 */
public final class CourseFile {

  private static final int BLOCK = 1 << 16;

  private CourseFile() {}

  /**
   * The courses in the order in which their patients come in the file, the trials of each in the
   * order of their numbers, or every fault with its line.
   *
   * @throws IOException if the file is there and the disk fails
   */
  public static Reading<Courses> read(Path file) throws IOException {
    Optional<PlainCourses> plain = Files.isRegularFile(file) ? plain(file) : Optional.empty();
    var builder = Courses.builder();
    var taker = CourseTaker.into(builder);
    if (plain.isPresent()) {
      plain.get().tell(taker);
      return Reading.of(builder.build());
    }
    return HistoryFile.read(file)
        .map(
            history -> {
              tell(history, taker);
              return builder.build();
            });
  }

  static void tell(HistoryFile history, CourseTaker taker) {
    for (List<HistoryLine> own : history.patients().values()) {
      taker.course(own.getFirst().group());
      for (HistoryLine line : own) {
        var given = new Given(line.volume(), line.potency(), line.strength());
        taker.trial(given.logDose(), line.grade(), line.lasted());
      }
    }
  }

  private static Optional<PlainCourses> plain(Path file) {
    boolean isPacked = FileText.isPacked(file.toString());
    try (InputStream raw = Files.newInputStream(file);
        InputStream in =
            isPacked ? new GZIPInputStream(new BufferedInputStream(raw, BLOCK), BLOCK) : raw) {
      return PlainCourses.read(in, isPacked ? FileText.MOST_BYTES : Long.MAX_VALUE);
    } catch (IOException doubt) {
      return Optional.empty();
    }
  }
}
