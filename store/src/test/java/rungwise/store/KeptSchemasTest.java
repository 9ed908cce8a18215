package rungwise.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rungwise.clinic.people.SignInAttempt;
import rungwise.store.backup.Backup;
import rungwise.store.backup.Copied;
import rungwise.store.journal.Inspected;

/**
 * Data folders as earlier numbered schemas left them are brought up to date, and no seal changes.
 * Nothing was released yet: the first one is the schema of this test's beginning. With each release
 * another is kept: {@code tools/mvn -pl store -am test -Dtest=KeptSchemasTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Drungwise.keep-schema=NAME} writes it.
 */
final class KeptSchemasTest {

  private static final Path KEPT = Path.of("src/test/resources/rungwise/store/schemas");
  private static final String NEXT = "\n-- next\n";
  private static final String KEY = "-- key ";

  @TempDir Path folder;

  static List<Path> kept() throws IOException {
    keepIfAsked();
    try (Stream<Path> files = Files.list(KEPT)) {
      return files.filter(file -> file.toString().endsWith(".sql.gz")).sorted().toList();
    }
  }

  private static void keepIfAsked() throws IOException {
    String name = System.getProperty("rungwise.keep-schema", "");
    if (!name.isEmpty()) {
      Path made = Files.createTempDirectory("kept-schema");
      try (var store = SqliteStore.open(made)) {
        SampleEntries.append(store);
        SampleEntries.appendFormulary(store);
        SampleCourse.append(store);
      }
      try (var out =
          new GZIPOutputStream(Files.newOutputStream(KEPT.resolve(name + ".sql.gz")))) {
        out.write(dump(made).getBytes(StandardCharsets.UTF_8));
      }
    }
  }

  /** Everything that is in a database file, as statements that make it again. */
  private static String dump(Path made) throws IOException {
    var statements = new ArrayList<String>();
    statements.add(KEY + Files.readString(made.resolve("journal.key")).strip());
    try (var raw = RawDatabase.in(made)) {
      List<Object> tables =
          raw.column("select name from sqlite_master where type = 'table' order by rowid");
      raw
          .column(
              "select sql from sqlite_master where sql is not null"
                  + " order by type = 'trigger', type = 'index', rowid")
          .stream()
          .map(String::valueOf)
          .filter(sql -> !sql.toLowerCase(Locale.ROOT).startsWith("create trigger"))
          .forEach(statements::add);
      for (Object table : tables) {
        String values =
            String.join(
                " || ', ' || ",
                raw.column("select name from pragma_table_info('" + table + "')").stream()
                    .map(column -> "quote(\"" + column + "\")")
                    .toList());
        raw.column("select " + values + " from \"" + table + "\"").stream()
            .map(row -> "insert into \"" + table + "\" values (" + row + ")")
            .forEach(statements::add);
      }
      raw.column("select sql from sqlite_master where type = 'trigger' order by rowid").stream()
          .map(String::valueOf)
          .forEach(statements::add);
    } catch (SQLException e) {
      throw new IOException(e);
    }
    return String.join(NEXT, statements) + "\n";
  }

  private void make(Path dump) throws Exception {
    String[] statements;
    try (var in = new GZIPInputStream(Files.newInputStream(dump))) {
      statements = new String(in.readAllBytes(), StandardCharsets.UTF_8).split(NEXT, -1);
    }
    Files.writeString(
        folder.resolve("journal.key"), statements[0].substring(KEY.length()).strip() + "\n");
    try (var raw = RawDatabase.in(folder)) {
      for (int at = 1; at < statements.length; at++) {
        raw.run(statements[at]);
      }
    }
  }

  @Test
  void there_is_a_kept_schema() throws IOException {
    assertThat(kept()).isNotEmpty();
  }

  @ParameterizedTest
  @MethodSource("kept")
  void a_kept_folder_is_brought_up_to_date_with_every_seal_as_it_was(Path dump) throws Exception {
    make(dump);
    List<Object> before;
    try (var raw = RawDatabase.in(folder)) {
      before = List.copyOf(raw.column("select seq || seal from entry order by seq"));
    }

    try (var store = SqliteStore.open(folder)) {
      store.records().readAll();
      SampleEntries.run(
          store,
          () -> SampleEntries.signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
    }

    assertThat(RecordCheck.of(folder, Optional.empty()))
        .isInstanceOfSatisfying(
            Inspected.Whole.class,
            whole -> assertThat(whole.entries()).isEqualTo(before.size() + 1));
    try (var raw = RawDatabase.in(folder)) {
      assertThat(raw.column("select seq || seal from entry order by seq"))
          .startsWith(before.toArray());
    }
    assertThat(Backup.take(folder, folder.resolve("copy"), Backup.Key.LEFT_OUT, SampleEntries.NOW))
        .isInstanceOf(Copied.Kept.class);
  }
}
