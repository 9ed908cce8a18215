package rungwise.checks.rows;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import rungwise.quantities.Reading;

/**
 * A file of reference rows.
 *
 * @param name its short name, such as "supply" for supply-checks.csv
 * @param faults what is wrong with lines that are no row, one entry a line
 */
public record RowFile(String name, List<Row> rows, List<String> faults) {

  private static final List<String> HEADER =
      List.of("id", "topic", "input", "expected", "tolerance", "source", "provenance");

  private static final int COLUMNS = HEADER.size();
  private static final int ID = HEADER.indexOf("id");
  private static final int TOPIC = HEADER.indexOf("topic");
  private static final int INPUT = HEADER.indexOf("input");
  private static final int EXPECTED = HEADER.indexOf("expected");
  private static final int TOLERANCE = HEADER.indexOf("tolerance");
  private static final int SOURCE = HEADER.indexOf("source");
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  public RowFile {
    rows = List.copyOf(rows);
    faults = List.copyOf(faults);
  }

  /** Reads a file; it is refused as a whole if it is not a file of rows at all. */
  public static Reading<RowFile> read(Path file) {
    try {
      return parse(shortName(file), Files.readString(file, StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      return Reading.refused("There is no file \"" + file + "\": give the path of a CSV file.");
    } catch (CharacterCodingException e) {
      return Reading.refused("\"" + file + "\" is not UTF-8 text: save it as UTF-8.");
    } catch (IOException e) {
      return Reading.refused("\"" + file + "\" cannot be read: give the path of a CSV file.");
    }
  }

  /** "supply-checks.csv" holds the rows that are called "supply:A001" and so on. */
  private static String shortName(Path file) {
    String name = Optional.ofNullable(file.getFileName()).map(Path::toString).orElse("");
    return name.replaceFirst("[-_.].*$", "");
  }

  /** Reads the text of a file. */
  public static Reading<RowFile> parse(String name, String text) {
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    try (Reader reader = new StringReader(plain);
        CSVParser parser =
            CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).get().parse(reader)) {
      return collect(name, parser);
    } catch (IOException | UncheckedIOException e) {
      return Reading.refused(
          "The file is not CSV: "
              + e.getMessage()
              + ". Put text with a comma, a quote or a line break in quotes.");
    }
  }

  private static Reading<RowFile> collect(String name, CSVParser parser) {
    var records = parser.iterator();
    List<String> header = records.hasNext() ? records.next().toList() : List.of();
    if (!header.equals(HEADER)) {
      return Reading.refused(
          "The first line is \""
              + String.join(",", header)
              + "\"; it must be \""
              + String.join(",", HEADER)
              + "\".");
    }
    var rows = new ArrayList<Row>();
    var faults = new ArrayList<String>();
    var ids = new HashSet<String>();
    for (long last = parser.getCurrentLineNumber(); records.hasNext(); ) {
      CSVRecord entry = records.next();
      long line = last + 1;
      last = parser.getCurrentLineNumber();
      if (isBlank(entry)) {
        continue;
      }
      faultOf(entry, ids)
          .ifPresentOrElse(
              fault -> faults.add("line " + line + ": " + fault),
              () -> rows.add(rowOf(name, line, entry)));
    }
    if (rows.isEmpty() && faults.isEmpty()) {
      return Reading.refused("The file holds no rows below its first line.");
    }
    return Reading.of(new RowFile(name, rows, faults));
  }

  private static boolean isBlank(CSVRecord entry) {
    return entry.size() == 1 && entry.get(0).isBlank();
  }

  private static Optional<String> faultOf(CSVRecord entry, Set<String> ids) {
    if (entry.size() < COLUMNS) {
      return Optional.of("it has " + entry.size() + " columns; a row has " + COLUMNS);
    }
    if (entry.get(ID).isBlank() || entry.get(TOPIC).isBlank()) {
      return Optional.of("its id or its topic is missing");
    }
    if (!ids.add(entry.get(ID))) {
      return Optional.of("the id " + entry.get(ID) + " was given before");
    }
    return Optional.empty();
  }

  /**
   * The columns in order. A source is running text and some are written with bare commas: what
   * stands between the tolerance and the last column is all source.
   */
  private static Row rowOf(String name, long line, CSVRecord entry) {
    int last = entry.size() - 1;
    String source = String.join(",", entry.toList().subList(SOURCE, last));
    return new Row(
        name,
        line,
        entry.get(ID),
        entry.get(TOPIC),
        entry.get(INPUT),
        entry.get(EXPECTED),
        entry.get(TOLERANCE),
        source,
        entry.get(last));
  }
}
