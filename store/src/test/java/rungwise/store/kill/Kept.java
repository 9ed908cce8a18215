package rungwise.store.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rungwise.store.RawDatabase;
import rungwise.store.RecordCheck;
import rungwise.store.SqliteStore;
import rungwise.store.journal.Inspected;

/** What must hold of a folder after whatever has ended the process that wrote to it. */
final class Kept {

  private Kept() {}

  /**
   * The record is whole from outside and from inside, every course can be read, and every entry
   * that was acknowledged is there.
   *
   * @param acknowledged the id of each entry by its number
   */
  static void assertWhole(Path folder, Map<Long, String> acknowledged, String when)
      throws SQLException {
    try (var store = SqliteStore.open(folder)) {
      store.courses().all().forEach(id -> assertThat(store.courses().find(id)).isPresent());
    }
    assertThat(RecordCheck.of(folder, Optional.empty()))
        .as(when)
        .isInstanceOf(Inspected.Whole.class);
    try (var raw = RawDatabase.in(folder)) {
      List<String> there =
          raw.column("select seq || ' ' || id from entry").stream().map(String::valueOf).toList();
      assertThat(there)
          .as(when)
          .containsAll(
              acknowledged.entrySet().stream()
                  .map(entry -> entry.getKey() + " " + entry.getValue())
                  .toList());
      assertThat(IntStream.range(0, there.size()))
          .as(when)
          .allMatch(at -> there.get(at).startsWith((at + 1) + " "));
    }
  }

  /** A loss of what was acknowledged is told. */
  static void assertLossIsTold(Path folder, String when) {
    assertThat(RecordCheck.of(folder, Optional.empty()))
        .as(when)
        .isInstanceOfSatisfying(
            Inspected.Broken.class,
            broken -> assertThat(broken.first().toString()).as(when).contains("had been saved"));
  }
}
