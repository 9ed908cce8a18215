package rungwise.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.record.RecordedEntry;
import rungwise.files.history.HistoryFile;
import rungwise.files.record.RecordFileReader;
import rungwise.files.record.RecordFileWriter;

/**
 * Sound files with bytes changed, moved, doubled and cut: whatever comes of it, a reader answers
 * with a value or with faults, and fails in no other way. {@code -Drungwise.fuzz=N} tries N times
 * as many.
 */
final class MutatedFilesTest {

  private static final long SEED = Long.getLong("rungwise.seed", 20260302);
  private static final int TRIES = 3000 * Integer.getInteger("rungwise.fuzz", 1);
  private static final byte[] TELLING =
      "\u0000\"',;:{}[]\n\r\t\\-+.eE019#&*!|>%@`\u00ff".getBytes(StandardCharsets.ISO_8859_1);

  private static final String CSV =
      "patient,group,injection,volume_ml,potency,strength,grade,duration_min,duration_status,"
          + "duration_upper_min,time,preparation,barrel\n"
          + "P-1,vasculogenic,1,0.2,1,1,3,45,exact,,2026-03-01T21:30:00+01:00,"
          + "alprostadil-20,u100-1\n"
          + "P-1,vasculogenic,2,0.2,0.95,1,2,,none,,,,\n"
          + "\"P, 2\",unknown,1,0.15,1.2,0.5,4,30,interval,60,,,\n";

  private static byte[] mutated(byte[] sound, Random random) {
    byte[] bytes = sound.clone();
    for (int change = random.nextInt(4); change >= 0; change--) {
      int at = random.nextInt(bytes.length);
      int length = 1 + random.nextInt(Math.min(20, bytes.length - at));
      var out = new ByteArrayOutputStream();
      out.write(bytes, 0, at);
      switch (random.nextInt(6)) {
        case 0 -> out.write(bytes, at + length, bytes.length - at - length); // left out
        case 1 -> { // doubled
          out.write(bytes, at, length);
          out.write(bytes, at, bytes.length - at);
        }
        case 2 -> { // another byte
          out.write(TELLING[random.nextInt(TELLING.length)]);
          out.write(bytes, at + 1, bytes.length - at - 1);
        }
        case 3 -> { // one more byte
          out.write(TELLING[random.nextInt(TELLING.length)]);
          out.write(bytes, at, bytes.length - at);
        }
        case 4 -> { // one bit
          out.write(bytes[at] ^ (1 << random.nextInt(8)));
          out.write(bytes, at + 1, bytes.length - at - 1);
        }
        default -> {} // cut
      }
      bytes = out.size() == 0 ? sound.clone() : out.toByteArray();
    }
    return bytes;
  }

  private static void tryAll(byte[] sound, Consumer<byte[]> reader) {
    for (int attempt = 0; attempt < TRIES; attempt++) {
      byte[] bytes = mutated(sound, new Random(SEED + attempt));
      try {
        reader.accept(bytes);
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError(
            "seed " + (SEED + attempt) + ": " + new String(bytes, StandardCharsets.ISO_8859_1), e);
      }
    }
  }

  @Test
  void a_history_file_is_read_or_its_faults_are_told() {
    byte[] sound = CSV.getBytes(StandardCharsets.UTF_8);
    assertThat(HistoryFile.survey("a.csv", sound).histories()).hasSize(2);

    tryAll(
        sound,
        bytes -> {
          var survey = HistoryFile.survey("a.csv", bytes);
          survey.histories();
          assertThat(survey.lines().isEmpty() && survey.faults().isEmpty()).isFalse();
          assertThat(HistoryFile.read("a.csv", bytes).found().isPresent())
              .isEqualTo(survey.faults().isEmpty());
        });
  }

  @Test
  void a_protocol_file_is_read_or_its_faults_are_told() {
    for (String sample : new SampleProtocolReader().samples()) {
      tryAll(
          sample.getBytes(StandardCharsets.UTF_8),
          bytes -> {
            var reading =
                new SampleProtocolReader().read(new String(bytes, StandardCharsets.UTF_8));
            assertThat(reading.found().isPresent()).isEqualTo(reading.faults().isEmpty());
          });
    }
  }

  @Test
  void a_record_file_is_read_or_the_line_of_its_fault_is_told() {
    var sound = new ByteArrayOutputStream();
    try (var out = new RecordFileWriter(sound, RecordFileWriter.Scope.RECORD)) {
      for (long number = 1; number <= 3; number++) {
        out.write(
            new RecordedEntry(
                number,
                new UUID(1, number).toString(),
                "screened",
                Optional.of("c"),
                Instant.parse("2026-03-02T09:00:00.123Z"),
                "somebody",
                Optional.empty(),
                Optional.empty(),
                Optional.of("because \"of\" \\ it"),
                Optional.of("compared"),
                List.of(
                    new RecordedEntry.FactRow(
                        "screened", Map.of("answers", 3L, "is_kept", true, "text", "\u00e9")))));
      }
    }

    tryAll(
        sound.toByteArray(),
        bytes -> {
          try (var in = new RecordFileReader(new ByteArrayInputStream(bytes))) {
            while (in.hasNext()) {
              assertThat(in.next().id()).isNotNull();
            }
          } catch (RecordFault told) {
            assertThat(told).hasMessageStartingWith("line ");
          }
        });
  }
}
