package rungwise.files.history;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.zip.GZIPInputStream;
import rungwise.dosing.fit.Courses;
import rungwise.quantities.Reading;

/**
 * Reads a history file for the fit: what {@link HistoryFile} reads, with the same faults, in a form
 * that is small and far sooner, if every line is right.
 */
public final class CourseFile {

  private static final int BLOCK = 1 << 16;

  private CourseFile() {}

  /**
   * What a fit is made from.
   *
   * @param preparation what the file calls the preparation of strength 1, if it says so
   * @param leftOut how many lines are of a preparation that was not chosen
   * @param patients what the file calls the man of a course, by its number from 0
   */
  public record Found(
      Courses courses, Optional<String> preparation, int leftOut, IntFunction<String> patients) {}

  /**
   * The courses in the order in which their patients come in the file, the trials of each in the
   * order of their numbers, or every fault with its line.
   *
   * @throws IOException if the file is there and the disk fails
   */
  public static Reading<Found> read(Path file, PreparationChoice choice) throws IOException {
    Optional<PlainCourses> plain =
        Files.isRegularFile(file)
            ? plain(() -> Files.newInputStream(file), FileText.isPacked(file.toString()), choice)
            : Optional.empty();
    return plain.isPresent()
        ? found(plain.get())
        : found(HistoryFile.read(file, FileText.MOST_BYTES), choice);
  }

  /**
   * The same of what a program writes to its end, packed if it begins as a packed file does.
   *
   * @throws IOException if it cannot be read
   */
  public static Reading<Found> read(String name, InputStream in, PreparationChoice choice)
      throws IOException {
    byte[] content = in.readNBytes(FileText.MOST_BYTES + 1);
    if (content.length > FileText.MOST_BYTES) {
      return Reading.refused(HistoryFile.tooLarge(name, FileText.MOST_BYTES));
    }
    String named = FileText.named(name, content);
    Optional<PlainCourses> plain =
        plain(() -> new ByteArrayInputStream(content), FileText.isPacked(named), choice);
    return plain.isPresent()
        ? found(plain.get())
        : found(HistoryFile.read(named, content, FileText.MOST_BYTES), choice);
  }

  private static Reading<Found> found(PlainCourses plain) {
    var builder = Courses.builder(plain.courses(), plain.trials());
    plain.tell(CourseTaker.into(builder));
    return Reading.of(
        new Found(builder.build(), plain.preparation(), /* leftOut= */ 0, plain::patient));
  }

  private static Reading<Found> found(Reading<HistoryFile> reading, PreparationChoice choice) {
    var builder = Courses.builder();
    var taker = CourseTaker.into(builder);
    return switch (reading) {
      case Reading.Refused<HistoryFile> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<HistoryFile> read ->
          choice
              .of(read.value())
              .map(
                  chosen -> {
                    tell(chosen, taker);
                    List<String> patients = List.copyOf(chosen.patients().keySet());
                    return new Found(
                        builder.build(), chosen.preparation(), chosen.leftOut(), patients::get);
                  });
    };
  }

  static void tell(PreparationChoice.Chosen chosen, CourseTaker taker) {
    for (List<PreparationChoice.Line> own : chosen.patients().values()) {
      taker.course(own.getFirst().said().group());
      for (PreparationChoice.Line line : own) {
        taker.trial(line.given().logDose(), line.said().grade(), line.said().lasted());
      }
    }
  }

  /** Opens what is read. */
  @FunctionalInterface
  private interface Opening {
    InputStream open() throws IOException;
  }

  private static Optional<PlainCourses> plain(
      Opening opening, boolean isPacked, PreparationChoice choice) {
    try (InputStream raw = opening.open();
        InputStream in =
            isPacked ? new GZIPInputStream(new BufferedInputStream(raw, BLOCK), BLOCK) : raw) {
      return PlainCourses.read(in, PlainCourses.MOST_LINES, choice);
    } catch (IOException doubt) {
      return Optional.empty();
    }
  }
}
