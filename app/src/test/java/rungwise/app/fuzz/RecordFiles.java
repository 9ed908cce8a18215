package rungwise.app.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.record.RecordedEntry;
import rungwise.files.record.RecordFileReader;
import rungwise.files.record.RecordFileWriter;

/** A record file: its entries, or the line of its fault. */
final class RecordFiles implements Target.Reader {

  private static final String HEADER =
      "{\"form\":\"rungwise-record\",\"version\":1,\"scope\":\"record\",\"entries\":[";

  static final List<String> SEEDS =
      List.of(
          HEADER
              + "\n{\"number\":1,\"id\":\"00000000-0000-0001-0000-000000000001\","
              + "\"kind\":\"screened\",\"course\":\"c\",\"at\":\"2026-03-02T09:00:00.123Z\","
              + "\"by\":\"somebody\",\"on_behalf_of\":\"x\",\"corrects\":\"y\","
              + "\"reason\":\"because \\\"of\\\" it\",\"clock\":\"compared\",\"facts\":["
              + "{\"screened\":{\"answers\":3,\"is_kept\":true,\"text\":\"\u00e9\"}},{\"a\":{}}]}"
              + "\n]}\n",
          HEADER + "]}",
          HEADER + "{\"number\":9223372036854775808}]}",
          HEADER
              + "{\"number\":1,\"id\":\"\\uD800\",\"kind\":\"\",\"at\":"
              + "\"+1000000000-12-31T23:59:59.999Z\",\"by\":\"\",\"facts\":[]}]}",
          "{\"form\":\"rungwise-record\",\"version\":2,\"entries\":[]}",
          "[1]",
          HEADER
              + "{\"number\":1,\"id\":\"\\uD800\",\"kind\":\"\",\"at\":"
              + "\"2026-03-02T09:00:00Z\",\"by\":\"\",\"facts\":[{\"\\uDC00\":{}}]}]}",
          "\u0000\u0000{\u0000");

  @Override
  public void read(byte[] input) {
    entries(input)
        .ifPresent(
            read -> {
              byte[] written = written(read);
              Hold.that(
                  entries(written).equals(Optional.of(read)),
                  () -> read + " is read back as " + entries(written));
            });
  }

  private static Optional<List<RecordedEntry>> entries(byte[] input) {
    var read = new ArrayList<RecordedEntry>();
    try (var in = new RecordFileReader(new ByteArrayInputStream(input))) {
      while (in.hasNext()) {
        read.add(in.next());
      }
      return Optional.of(read);
    } catch (RecordFault told) {
      Hold.that(String.valueOf(told.getMessage()).startsWith("line "), () -> "no line in " + told);
      return Optional.empty();
    }
  }

  private static byte[] written(List<RecordedEntry> entries) {
    var bytes = new ByteArrayOutputStream();
    try (var out = new RecordFileWriter(bytes, RecordFileWriter.Scope.RECORD)) {
      entries.forEach(out::write);
    }
    return bytes.toByteArray();
  }
}
