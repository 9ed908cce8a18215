package rungwise.files.history;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastInjection;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** How much of a file is in memory before it is refused. */
final class FileTextTest {

  /** What this thread has asked of the memory while it did something. */
  private static long allocatedBy(Runnable work) {
    var threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    work.run();
    return threads.getCurrentThreadAllocatedBytes() - before;
  }

  private static byte[] packedTimes(String text, int times) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var out = new GZIPOutputStream(bytes)) {
      byte[] one = text.getBytes(StandardCharsets.UTF_8);
      for (int i = 0; i < times; i++) {
        out.write(one);
      }
    }
    return bytes.toByteArray();
  }

  @Test
  void a_line_without_an_end_is_refused_before_it_is_all_unpacked() throws IOException {
    byte[] bomb = packedTimes("a".repeat(1 << 20), 400);

    long allocated =
        allocatedBy(
            () ->
                assertThat(HistoryFile.read("h.csv.gz", bomb).faults())
                    .singleElement()
                    .asString()
                    .startsWith("line 1: this line is longer"));

    assertThat(bomb.length).isLessThan(1 << 20);
    assertThat(allocated).isLessThan(16L << 20);
  }

  @Test
  void a_packed_file_of_more_than_sixteen_megabytes_is_refused_within_a_hundred()
      throws IOException {
    byte[] large = packedTimes("A,vasculogenic,1,0.1,1,1,2,,none,\n", 8_000_000);

    long allocated =
        allocatedBy(
            () ->
                assertThat(HistoryFile.read("h.csv.gz", large).faults())
                    .singleElement()
                    .asString()
                    .contains("larger, once unpacked, than 16 MB"));

    assertThat(allocated).isLessThan(200L << 20);
  }

  @Test
  void characters_that_lie_across_two_blocks_are_read_whole() {
    for (int before = 65_530; before < 65_540; before++) {
      String text = "x\n".repeat(before / 2) + (before % 2 == 0 ? "" : "\n") + "\ud834\udd1e\u00e9";
      assertThat(FileText.of("h.csv", text.getBytes(StandardCharsets.UTF_8), 1 << 20).orThrow())
          .isEqualTo(text);
    }
  }

  @Test
  void a_name_with_something_that_nobody_can_see_is_refused_and_a_joined_one_is_kept() {
    String header = "patient,group,injection,volume_ml,potency,strength,grade,duration_min,";
    String rest = ",vasculogenic,1,0.1,1,1,2,,none,\n";
    String names = header + "duration_status,duration_upper_min\n";

    assertThat(read(names + "HL\u200B-1" + rest).faults())
        .singleElement()
        .asString()
        .contains("line 2: patient", "nobody can see (U+200B");
    assertThat(read(names + "\u0645\u06cc\u200c\u062e" + rest).orThrow().lines())
        .singleElement()
        .satisfies(line -> assertThat(line.patient()).hasSize(4));
  }

  @Test
  void a_history_that_was_written_is_read_back_as_it_was() {
    for (String patient :
        List.of("=1+1", "@SUM(1)", "-7", "+49", "'=1", "''", "HL-1017", "O'Neil")) {
      var injection =
          new PastInjection(
              2,
              1,
              Volume.ofMicrolitres(100),
              1,
              Optional.of(1.0),
              Grade.USABLE,
              new SoftAfter.NotKnown(),
              Optional.empty());
      var out = new ByteArrayOutputStream();
      HistoryFileWriter.write(
          List.of(new PastHistory(patient, "vasculogenic", List.of(injection))), out);

      String text = out.toString(StandardCharsets.UTF_8);
      assertThat(text.lines().skip(1)).noneMatch(line -> line.matches("\"?[=+\\-@].*"));
      assertThat(read(text).orThrow().lines())
          .singleElement()
          .satisfies(line -> assertThat(line.patient()).isEqualTo(patient));
    }
  }

  private static Reading<HistoryFile> read(String text) {
    return HistoryFile.read("h.csv", text.getBytes(StandardCharsets.UTF_8));
  }
}
