package rungwise.app.fuzz;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** A reader of text from outside, with inputs to begin from. */
enum Target {
  AMOUNTS(12, Amounts::new, Amounts.SEEDS),
  TIMES(12, Times::new, Times.SEEDS),
  NAMES(8, Names::new, Names.SEEDS),
  HISTORY_FILE(8, HistoryFiles::new, HistoryFiles.SEEDS),
  PROTOCOL_FILE(8, ProtocolFiles::new, ProtocolFiles.seeds()),
  POPULATION_FILE(10, PopulationFiles::new, PopulationFiles.seeds()),
  RECORD_FILE(22, RecordFiles::new, RecordFiles.SEEDS),
  FORMS(20, FormsOfPages::new, FormsOfPages.SEEDS);

  /** What reads an input, and holds what it has read to what it should be. */
  interface Reader {

    /**
     * Reads an input.
     *
     * @throws AssertionError if what came of it is neither a sound value nor faults
     */
    void read(byte[] input);
  }

  /** Of 100 seconds: more for what is quickly read. */
  final int share;

  private final Supplier<Reader> start;
  private final List<String> seeds;

  Target(int share, Supplier<Reader> start, List<String> seeds) {
    this.share = share;
    this.start = start;
    this.seeds = List.copyOf(seeds);
  }

  /** "history-file". */
  String token() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  Reader start() {
    return start.get();
  }

  /** Inputs that people might send, and those by which the tool came to code of its own. */
  List<byte[]> corpus() {
    return Stream.concat(
            seeds.stream().map(seed -> seed.getBytes(StandardCharsets.UTF_8)), found().stream())
        .toList();
  }

  /** The inputs that were found and kept, a line of Base64 for each. */
  private List<byte[]> found() {
    try (InputStream kept = Target.class.getResourceAsStream(token() + ".txt")) {
      return kept == null
          ? List.of()
          : new String(kept.readAllBytes(), StandardCharsets.US_ASCII)
              .lines()
              .map(line -> Base64.getDecoder().decode(line))
              .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
