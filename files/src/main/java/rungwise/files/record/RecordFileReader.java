package rungwise.files.record;

import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.record.RecordedEntry;
import rungwise.clinic.record.RecordedEntry.FactRow;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;

/**
 * Reads a record file an entry at a time. Whatever is not in the documented form is a {@link
 * RecordFault} that says in which line.
 */
public final class RecordFileReader implements Iterator<RecordedEntry>, AutoCloseable {

  /**
   * Far above what a clinic writes into one entry; a signed dose with its advice is the longest.
   */
  private static final int MOST_ROWS = 1000;

  private static final Set<String> HEADER =
      Set.of(RecordFileWriter.FORM, RecordFileWriter.VERSION, RecordFileWriter.SCOPE);

  private static final String NOT_SOUND = "this is not sound JSON: ";

  private final JsonParser in;
  private boolean isOver = false;

  /** Reads the beginning of a file; the stream is closed with this. */
  public RecordFileReader(InputStream stream) {
    this.in = parser(stream);
    reading(
        () -> {
          readHeader();
          return true;
        });
  }

  /** The first bytes alone say in which encoding the text is, if it is in one. */
  private static JsonParser parser(InputStream stream) {
    try {
      return JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build()
          .createParser(ObjectReadContext.empty(), stream);
    } catch (JacksonException e) {
      throw new RecordFault("line 1: " + NOT_SOUND + e.getOriginalMessage(), e);
    }
  }

  private void readHeader() {
    require(in.nextToken() == JsonToken.START_OBJECT, "a record file begins with {");
    var header = new LinkedHashMap<String, Object>();
    while (in.nextToken() == JsonToken.PROPERTY_NAME
        && !in.currentName().equals(RecordFileWriter.ENTRIES)) {
      String name = name();
      require(HEADER.contains(name), "\"" + name + "\" is not known here");
      in.nextToken();
      header.put(name, value());
    }
    require(
        RecordFileWriter.FORM_NAME.equals(header.get(RecordFileWriter.FORM)),
        "this is not a record file: form must be " + RecordFileWriter.FORM_NAME);
    require(
        Long.valueOf(RecordFileWriter.VERSION_NOW).equals(header.get(RecordFileWriter.VERSION)),
        "another version of the form: this program reads version " + RecordFileWriter.VERSION_NOW);
    require(in.nextToken() == JsonToken.START_ARRAY, "entries must be a list");
    goOn();
  }

  private void goOn() {
    JsonToken token = in.nextToken();
    if (token == JsonToken.START_OBJECT) {
      return;
    }
    require(token == JsonToken.END_ARRAY, "an entry must be an object");
    isOver = true;
    require(in.nextToken() == JsonToken.END_OBJECT, "nothing follows the entries");
    require(in.nextToken() == null, "nothing follows the last bracket");
  }

  @Override
  public boolean hasNext() {
    return !isOver;
  }

  @Override
  public RecordedEntry next() {
    if (isOver) {
      throw new NoSuchElementException();
    }
    return reading(
        () -> {
          RecordedEntry entry = entry();
          goOn();
          return entry;
        });
  }

  private RecordedEntry entry() {
    var values = new LinkedHashMap<String, Object>();
    List<FactRow> facts = List.of();
    while (in.nextToken() == JsonToken.PROPERTY_NAME) {
      String name = name();
      JsonToken token = in.nextToken();
      if (name.equals(Key.FACTS.token())) {
        require(token == JsonToken.START_ARRAY, "facts must be a list");
        facts = facts();
      } else {
        values.put(name, value());
      }
    }
    var entry =
        new RecordedEntry(
            number(values),
            needed(values, Key.ID),
            needed(values, Key.KIND),
            text(values, Key.COURSE),
            instant(needed(values, Key.AT)),
            needed(values, Key.BY),
            text(values, Key.ON_BEHALF_OF),
            text(values, Key.CORRECTS),
            text(values, Key.REASON),
            text(values, Key.CLOCK),
            facts);
    require(values.isEmpty(), values.keySet() + " is not known in an entry");
    return entry;
  }

  private List<FactRow> facts() {
    var facts = new ArrayList<FactRow>();
    while (in.nextToken() == JsonToken.START_OBJECT) {
      require(in.nextToken() == JsonToken.PROPERTY_NAME, "a fact has a name");
      String name = name();
      require(in.nextToken() == JsonToken.START_OBJECT, "a fact has values");
      Map<String, Object> values = new LinkedHashMap<>();
      while (in.nextToken() == JsonToken.PROPERTY_NAME) {
        String column = name();
        in.nextToken();
        values.put(column, value());
      }
      require(in.nextToken() == JsonToken.END_OBJECT, "a fact has one name");
      facts.add(new FactRow(name, values));
      require(facts.size() <= MOST_ROWS, "an entry of so many facts was never written");
    }
    require(in.currentToken() == JsonToken.END_ARRAY, "a fact must be an object");
    return facts;
  }

  private String name() {
    return whole(in.currentName());
  }

  /** A half of a character cannot be kept: it would come back as another text. */
  private String whole(String text) {
    boolean isWhole =
        text.codePoints().noneMatch(point -> Character.getType(point) == Character.SURROGATE);
    require(isWhole, "a text holds half a character: it is not sound UTF-8");
    return text;
  }

  private Object value() {
    return switch (in.currentToken()) {
      case VALUE_STRING -> whole(in.getString());
      case VALUE_NUMBER_INT -> in.getLongValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      case null, default -> throw fault("a value is a text, a whole number, true or false", null);
    };
  }

  private long number(Map<String, Object> values) {
    if (values.remove(Key.NUMBER.token()) instanceof Long number) {
      return number;
    }
    throw fault("number must be a whole number", null);
  }

  private String needed(Map<String, Object> values, Key key) {
    return text(values, key).orElseThrow(() -> fault("an entry needs " + key.token(), null));
  }

  private Optional<String> text(Map<String, Object> values, Key key) {
    Object value = values.remove(key.token());
    require(value == null || value instanceof String, key.token() + " must be a text");
    return Optional.ofNullable((String) value);
  }

  private Instant instant(String text) {
    try {
      Instant instant = Instant.parse(text);
      require(
          instant.equals(instant.truncatedTo(ChronoUnit.MILLIS)), "at has milliseconds at most");
      return instant;
    } catch (DateTimeException e) {
      throw fault("at must be an instant such as 2026-03-02T09:00:00Z", e);
    }
  }

  private void require(boolean is, String what) {
    if (!is) {
      throw fault(what, null);
    }
  }

  private RecordFault fault(String what, @Nullable Exception cause) {
    String message = "line " + in.currentLocation().getLineNr() + ": " + what;
    return cause == null ? new RecordFault(message) : new RecordFault(message, cause);
  }

  /** What is read; a fault of the JSON is told like any other. */
  private <T> T reading(Supplier<T> work) {
    try {
      return work.get();
    } catch (JacksonException e) {
      throw fault(NOT_SOUND + e.getOriginalMessage(), e);
    }
  }

  @Override
  public void close() {
    in.close();
  }
}
