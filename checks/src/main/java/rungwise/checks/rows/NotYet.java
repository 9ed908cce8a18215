package rungwise.checks.rows;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import rungwise.checks.topics.Input;

/** The topics that the product cannot answer yet, each with the reason. */
public record NotYet(List<Entry> entries) {

  private static final String RESOURCE = "/reference/not-yet.csv";
  private static final String ANYTHING = "*";

  /** The inputs that tell rows of one topic apart. */
  private static final List<String> SELECTORS =
      List.of("op", "question", "jurisdiction", "label", "guideline", "scheme");

  /**
   * One topic, or the part of it that one input selects.
   *
   * @param selected the value of an op, question or jurisdiction; "*" for the whole topic
   */
  public record Entry(String topic, String selected, String reason) {

    /** Whether this entry speaks of a row. */
    public boolean covers(Row row) {
      return topic.equals(row.topic()) && (selected.equals(ANYTHING) || selects(row));
    }

    private boolean selects(Row row) {
      Input input = Input.parse(row.input());
      return SELECTORS.stream()
          .map(input::find)
          .flatMap(Optional::stream)
          .anyMatch(selected::equals);
    }
  }

  public NotYet {
    entries = List.copyOf(entries);
  }

  /** The list that stands beside the reference rows. */
  public static NotYet committed() {
    try (InputStream in = NotYet.class.getResourceAsStream(RESOURCE)) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return parse(text);
    } catch (IOException e) {
      throw new UncheckedIOException("bug: " + RESOURCE + " cannot be read", e);
    }
  }

  private static NotYet parse(String text) throws IOException {
    var format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      return new NotYet(
          parser.stream()
              .map(
                  entry ->
                      new Entry(
                          entry.get("topic"), entry.get("op-or-question"), entry.get("reason")))
              .toList());
    }
  }

  /** Why such a row is not answered yet, if the list says so. */
  public Optional<String> reasonFor(Row row) {
    return entries.stream().filter(entry -> entry.covers(row)).map(Entry::reason).findFirst();
  }
}
