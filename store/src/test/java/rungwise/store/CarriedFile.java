package rungwise.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.record.Carrying;
import rungwise.clinic.record.RecordedEntry;
import rungwise.files.record.RecordFileReader;
import rungwise.files.record.RecordFileWriter;
import rungwise.files.record.RecordFileWriter.Scope;

/** A record as the text of a file, and the way back into a store. */
public final class CarriedFile {

  private CarriedFile() {}

  static Carrying carrying(SqliteStore store) {
    return new Carrying(store.records(), store.transactions());
  }

  private static String written(Scope scope, Consumer<Consumer<RecordedEntry>> source) {
    var bytes = new ByteArrayOutputStream();
    try (var out = new RecordFileWriter(bytes, scope)) {
      source.accept(out::write);
    }
    return bytes.toString(StandardCharsets.UTF_8);
  }

  public static String whole(SqliteStore store) {
    return written(Scope.RECORD, carrying(store)::whole);
  }

  static String course(SqliteStore store, CourseId id) {
    return written(Scope.COURSE, each -> carrying(store).course(id, each));
  }

  /** Seals every entry of a file anew in an empty store; gives back how many there were. */
  public static long takeIn(SqliteStore store, String file) {
    try (var in =
        new RecordFileReader(new ByteArrayInputStream(file.getBytes(StandardCharsets.UTF_8)))) {
      return carrying(store).takeIn(() -> in);
    }
  }
}
