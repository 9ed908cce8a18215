package rungwise.files.history;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The records of a text one after another, up to one that cannot be told apart. */
final class Records implements AutoCloseable {

  static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).get();

  private final CSVParser parser;
  private final Iterator<CSVRecord> values;
  private Optional<Numbered> ahead = Optional.empty();
  private Optional<String> broken = Optional.empty();

  /** A record and the line in which it begins. */
  record Numbered(long line, CSVRecord values) {}

  Records(String text) throws IOException {
    parser = CSVParser.parse(new StringReader(text), FORMAT);
    values = parser.iterator();
    readAhead();
  }

  /** The next one, if there is one. */
  Optional<Numbered> next() {
    Optional<Numbered> one = ahead;
    if (one.isPresent()) {
      readAhead();
    }
    return one;
  }

  /** Whether the text ended rightly after the one that {@link #next} gave last. */
  boolean isAtEnd() {
    return ahead.isEmpty() && broken.isEmpty();
  }

  /** What is wrong with the line at which the records end too early, if they do. */
  Optional<String> broken() {
    return broken;
  }

  private void readAhead() {
    long line = parser.getCurrentLineNumber() + 1;
    try {
      ahead = values.hasNext() ? Optional.of(new Numbered(line, values.next())) : Optional.empty();
    } catch (UncheckedIOException open) {
      ahead = Optional.empty();
      broken =
          Optional.of(
              "line "
                  + line
                  + ": a quotation mark that begins in this line is not closed rightly: the file"
                  + " may have been cut");
    }
  }

  @Override
  public void close() throws IOException {
    parser.close();
  }
}
