package rungwise.files.record;

import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;
import rungwise.clinic.record.RecordedEntry;
import rungwise.clinic.record.RecordedEntry.FactRow;
import tools.jackson.core.JsonEncoding;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/** Writes a record file: the same entries give the same bytes. */
public final class RecordFileWriter implements AutoCloseable {

  static final String FORM = "form";
  static final String FORM_NAME = "rungwise-record";
  static final String VERSION = "version";
  static final int VERSION_NOW = 1;
  static final String SCOPE = "scope";
  static final String ENTRIES = "entries";

  private final JsonGenerator out;

  /** What a file holds. */
  public enum Scope {
    RECORD,
    COURSE;

    String token() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Begins a file; the stream is closed with it. */
  public RecordFileWriter(OutputStream stream, Scope scope) {
    this.out =
        new JsonFactory().createGenerator(ObjectWriteContext.empty(), stream, JsonEncoding.UTF8);
    out.writeStartObject();
    out.writeStringProperty(FORM, FORM_NAME);
    out.writeNumberProperty(VERSION, VERSION_NOW);
    out.writeStringProperty(SCOPE, scope.token());
    out.writeArrayPropertyStart(ENTRIES);
  }

  /** Writes the next entry, in a line of its own. */
  public void write(RecordedEntry entry) {
    out.writeRaw('\n');
    out.writeStartObject();
    out.writeNumberProperty(Key.NUMBER.token(), entry.number());
    out.writeStringProperty(Key.ID.token(), entry.id());
    out.writeStringProperty(Key.KIND.token(), entry.kind());
    write(Key.COURSE, entry.course());
    out.writeStringProperty(Key.AT.token(), entry.at().toString());
    out.writeStringProperty(Key.BY.token(), entry.by());
    write(Key.ON_BEHALF_OF, entry.onBehalfOf());
    write(Key.CORRECTS, entry.corrects());
    write(Key.REASON, entry.reason());
    write(Key.CLOCK, entry.clock());
    out.writeArrayPropertyStart(Key.FACTS.token());
    entry.facts().forEach(this::write);
    out.writeEndArray();
    out.writeEndObject();
  }

  private void write(Key key, Optional<String> text) {
    text.ifPresent(value -> out.writeStringProperty(key.token(), value));
  }

  private void write(FactRow fact) {
    out.writeStartObject();
    out.writeName(fact.name());
    out.writeStartObject();
    fact.values()
        .forEach(
            (name, value) -> {
              switch (value) {
                case Long number -> out.writeNumberProperty(name, number);
                case Boolean is -> out.writeBooleanProperty(name, is);
                default -> out.writeStringProperty(name, value.toString());
              }
            });
    out.writeEndObject();
    out.writeEndObject();
  }

  @Override
  public void close() {
    out.writeRaw('\n');
    out.writeEndArray();
    out.writeEndObject();
    out.writeRaw('\n');
    out.close();
  }
}
