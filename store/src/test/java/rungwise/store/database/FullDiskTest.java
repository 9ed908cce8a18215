package rungwise.store.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/**
 * A disk on which nothing more fits, and one that may not be written to. SQLite gives the very
 * error of a full disk when the file may have no more pages; the read-only disk is the file opened
 * so.
 */
final class FullDiskTest {

  private static final int MOST_PAGES = 1_000_000_000;

  @TempDir Path folder;

  private static void setMostPages(SqliteStore store, long pages) {
    var database = (Database) store.transactions();
    database.inTransaction(() -> database.writing().fetchValue("pragma max_page_count = " + pages));
  }

  private static long pages(SqliteStore store) {
    var database = (Database) store.transactions();
    return ((Number) database.reading().fetchValue("pragma page_count")).longValue();
  }

  private static List<CourseId> openUntilFull(TitrationWorld world) {
    var opened = new ArrayList<CourseId>();
    Throwable failure =
        catchThrowable(
            () -> {
              while (true) {
                opened.add(world.open());
              }
            });

    assertThat(failure).isInstanceOf(CannotKeep.class).hasMessageContaining("is full");
    assertThat(failure).hasMessageContaining("nothing was lost");
    return opened;
  }

  @Test
  void on_a_full_disk_nothing_acknowledged_is_lost_and_it_goes_on_once_there_is_room() {
    try (var store = SqliteStore.open(folder)) {
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      setMostPages(store, pages(store) + 20);

      List<CourseId> opened = openUntilFull(world);

      assertThat(opened).isNotEmpty();
      assertThat(store.journal().firstBroken()).isEmpty();
      for (CourseId course : opened) {
        assertThat(world.file(course).vial()).isPresent();
      }
      setMostPages(store, MOST_PAGES);
      assertThat(world.file(world.open()).vial()).isPresent();
      assertThat(store.journal().firstBroken()).isEmpty();
    }
    try (var again = SqliteStore.open(folder)) {
      assertThat(again.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void a_transaction_that_finds_the_disk_full_is_undone_whole() {
    try (var store = SqliteStore.open(folder)) {
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      setMostPages(store, pages(store) + 3);

      openUntilFull(world);

      store
          .courses()
          .all()
          .forEach(
              id ->
                  assertThat(world.file(id).entries().size())
                      .as("opened with its plan, never without")
                      .isGreaterThanOrEqualTo(2));
    }
  }

  @Test
  void what_sqlite_says_of_a_disk_that_may_not_be_written_to_becomes_a_sentence()
      throws IOException {
    SqliteStore.open(folder).close();
    var config = new SQLiteConfig();
    config.setReadOnly(true);
    var source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + folder.resolve(Database.FILE));

    Throwable failure =
        catchThrowable(
            () -> {
              try (var connection = source.getConnection();
                  var statement = connection.createStatement()) {
                statement.execute("delete from credential");
              }
            });

    assertThat(Storage.explain(failure)).get().asString().contains("may not be written to");
    assertThat(Files.exists(folder.resolve(Database.FILE))).isTrue();
  }

  @Test
  void what_is_not_about_the_disk_is_told_as_it_is() {
    try (var store = SqliteStore.open(folder)) {
      var database = (Database) store.transactions();

      assertThatThrownBy(
              () -> database.inTransaction(() -> database.writing().execute("no such words")))
          .isNotInstanceOf(CannotKeep.class);
    }
  }
}
