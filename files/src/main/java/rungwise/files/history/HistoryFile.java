package rungwise.files.history;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * A history file as it was read: comma-separated values in UTF-8 with a header (RFC 4180), packed
 * with gzip (RFC 1952) if its name ends in ".gz".
 *
 * @param lines one for each injection, in the order of the file
 */
public record HistoryFile(List<HistoryLine> lines) {

  private static final long BYTES_IN_A_MEGABYTE = 1 << 20;

  public HistoryFile {
    lines = List.copyOf(lines);
  }

  /**
   * Reads a file, or tells every fault with its line.
   *
   * @throws IOException if the file is there and the disk fails
   */
  public static Reading<HistoryFile> read(Path file) throws IOException {
    return read(file, FileText.MOST_BYTES_OF_ONE);
  }

  /** The same of a file that may have as many bytes, once unpacked. */
  static Reading<HistoryFile> read(Path file, long most) throws IOException {
    if (Files.isDirectory(file)) {
      return Reading.refused(file + " is a folder: give a file whose name ends in .csv or .csv.gz");
    }
    try {
      if (Files.size(file) > most) {
        return Reading.refused(tooLarge(file.toString(), most));
      }
      return read(file.toString(), Files.readAllBytes(file), most);
    } catch (NoSuchFileException missing) {
      return Reading.refused("There is no file " + file + ": give the path of a history file");
    }
  }

  /**
   * Reads the content of a file, or tells every fault with its line.
   *
   * @param name the name of the file, which tells whether it is packed
   */
  public static Reading<HistoryFile> read(String name, byte[] content) {
    return read(name, content, FileText.MOST_BYTES_OF_ONE);
  }

  /**
   * Reads what a program writes to its end, packed if it begins as a packed file does.
   *
   * @throws IOException if it cannot be read
   */
  public static Reading<HistoryFile> read(String name, InputStream in) throws IOException {
    byte[] content = in.readNBytes(FileText.MOST_BYTES_OF_ONE + 1);
    return content.length > FileText.MOST_BYTES_OF_ONE
        ? Reading.refused(tooLarge(name, FileText.MOST_BYTES_OF_ONE))
        : read(FileText.named(name, content), content);
  }

  static String tooLarge(String file, long most) {
    return "line 1: " + file + " has more than " + most / BYTES_IN_A_MEGABYTE + " MB: divide it";
  }

  static Reading<HistoryFile> read(String name, byte[] content, long most) {
    Reading<String> text = FileText.of(name, content, most);
    return switch (text) {
      case Reading.Refused<String> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<String> read -> HistoryTable.read(read.value()).map(HistoryFile::new);
    };
  }

  /**
   * Reads a file as far as it is right.
   *
   * @throws NoSuchFileException if it is not there
   * @throws IOException if the disk fails
   */
  public static HistorySurvey survey(Path file) throws IOException {
    return Files.size(file) > FileText.MOST_BYTES_OF_ONE
        ? new HistorySurvey(
            List.of(),
            List.of(Fault.ofForm(tooLarge(file.toString(), FileText.MOST_BYTES_OF_ONE))),
            /* aside= */ 0)
        : survey(file.toString(), Files.readAllBytes(file));
  }

  /**
   * Reads the content of a file as far as it is right.
   *
   * @param name the name of the file, which tells whether it is packed
   */
  public static HistorySurvey survey(String name, byte[] content) {
    Reading<String> text = FileText.of(name, content, FileText.MOST_BYTES_OF_ONE);
    return switch (text) {
      case Reading.Refused<String> refused ->
          new HistorySurvey(List.of(), refused.placed(), /* aside= */ 0);
      case Reading.Read<String> read -> HistoryTable.survey(read.value());
    };
  }
}
