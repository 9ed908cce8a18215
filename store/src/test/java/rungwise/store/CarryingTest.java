package rungwise.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.known.SamplePreparations;

/** A record written into a file, read into an empty store, and written again. */
final class CarryingTest {

  private static final long SEED = 20260302;

  @TempDir Path top;
  private Path folder;
  private Path empty;

  @BeforeEach
  void makeFolders() throws IOException {
    folder = Files.createDirectory(top.resolve("data"));
    empty = Files.createDirectory(top.resolve("empty"));
  }

  private static void fill(SqliteStore store) {
    SampleEntries.append(store);
    SampleEntries.appendFormulary(store);
    SampleEntries.appendAccess(store);
    SampleCourse.append(store);
  }

  private static CourseId titrated(TitrationWorld world) {
    CourseId course = world.open();
    world.signProposed(course);
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("1").exactly("20"))
        .orThrow();
    world.signProposed(course);
    return course;
  }

  /** A dose at a visit from a vial that the clinic keeps, and amended. */
  private static void drawnFromTheClinics(TitrationWorld world, CourseId id) {
    VialForm label = VialForm.of(SamplePreparations.ALPROSTADIL_20).lot("C-7");
    world.clinicVials().add(Staff.EDUCATOR, label.draft()).orThrow();
    String vial = world.clinicVials().kept().getLast().id().text();
    world.clinicVials().amend(Staff.EDUCATOR, vial, label.draft(), "looked at again").orThrow();
    var given = new VisitForms(world).alreadyGiven("12").from(vial);
    world.room().start(Staff.EDUCATOR, id, given).orThrow();
  }

  @Test
  void the_whole_record_comes_back_byte_for_byte() {
    String file;
    try (var store = SqliteStore.open(folder)) {
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      drawnFromTheClinics(world, titrated(world));
      fill(store);
      file = CarriedFile.whole(store);
    }
    try (var store = SqliteStore.open(empty)) {
      assertThat(CarriedFile.takeIn(store, file)).isGreaterThan(20);

      assertThat(CarriedFile.whole(store)).isEqualTo(file);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  @Test
  void every_kind_of_row_that_a_store_can_hold_is_in_the_file() throws Exception {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.in(folder)) {
      fill(store);
      String signed = raw.column("select entry_id from dose_signed").getFirst().toString();
      raw.run("insert into dose_signed_override values ('" + signed + "', 1, 'new_stock')");
      String file = CarriedFile.whole(store);
      List<Object> tables =
          raw.column(
              "select m.name from sqlite_master m join pragma_table_info(m.name) c"
                  + " where m.type = 'table' and c.name = 'entry_id'");

      assertThat(tables).hasSizeGreaterThan(20);
      for (Object table : tables) {
        assertThat(file).contains("{\"" + table + "\":{");
      }
    }
  }

  @Test
  void one_course_comes_back_byte_for_byte_with_all_that_it_needs_and_nobody_else() {
    String file;
    CourseId id;
    List<KeptAdvice> before;
    try (var store = SqliteStore.open(folder)) {
      SampleEntries.append(store);
      SampleEntries.appendFormulary(store);
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      world.open();
      id = titrated(world);
      drawnFromTheClinics(world, id);
      file = CarriedFile.course(store, id);
      before = advices(world, id);
      assertThat(file).contains("Man 2").doesNotContain("Man 1");
    }
    try (var store = SqliteStore.open(empty)) {
      CarriedFile.takeIn(store, file);

      assertThat(CarriedFile.course(store, id)).isEqualTo(file);
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      assertThat(advices(world, id)).isEqualTo(before);
      assertThat(store.journal().firstBroken()).isEmpty();
    }
  }

  /** Each signed advice as it was stored, after it was asked again and came out the same. */
  private static List<KeptAdvice> advices(TitrationWorld world, CourseId id) {
    return world.file(id).inForce(DoseSigned.class).stream()
        .map(
            written -> {
              var replay = world.titration().replay(id, written.entry().id()).orElseThrow();
              assertThat(replay.differences()).isEmpty();
              return replay.stored();
            })
        .toList();
  }

  @Test
  void a_course_that_is_not_there_gives_nothing() {
    try (var store = SqliteStore.open(folder)) {
      fill(store);

      assertThat(
              CarriedFile.carrying(store)
                  .course(new CourseId(new UUID(8, 8).toString()), entry -> {}))
          .isZero();
    }
  }

  @Test
  void nothing_is_taken_into_a_record_that_is_not_empty() {
    try (var store = SqliteStore.open(folder)) {
      fill(store);
      String file = CarriedFile.whole(store);

      assertThatThrownBy(() -> CarriedFile.takeIn(store, file))
          .isInstanceOf(RecordFault.class)
          .hasMessageContaining("is not empty");
      assertThat(CarriedFile.whole(store)).isEqualTo(file);
    }
  }

  @Test
  void a_file_that_is_wrong_anywhere_leaves_the_store_empty_and_says_where() {
    String file;
    try (var store = SqliteStore.open(folder)) {
      fill(store);
      file = CarriedFile.whole(store);
    }
    try (var store = SqliteStore.open(empty)) {
      refused(store, file.replace("\"grade\":3", "\"grade\":7"), "entry ");
      refused(store, file.replace("\"grade\":3", "\"grade\":\"3\""), "does not hold");
      refused(store, file.replace("\"grade\":3", "\"grade\":3,\"grades\":3"), "has no \"grades\"");
      refused(
          store, file.replace("\"lot\":", "\"entry_id\":\"x\",\"lot\":"), "has no \"entry_id\"");
      refused(store, file.replace("\"screened\":", "\"credential\":"), "nothing is called");
      refused(store, file.replace("\"number\":4,", "\"number\":5,"), "its number should be 4");
      refused(store, file.replace("trazodone", "trazodon"), "cannot be read");
      refused(store, file.replaceFirst("\"by\":\"[^\"]*\",", ""), "needs by");
      refused(store, file.replaceFirst("\"at\":\"[^\"]*\"", "\"at\":\"today\""), "at must be");
      refused(store, file.substring(0, file.length() / 2), "not sound JSON");
      refused(store, file + "{}", "nothing follows");
      refused(store, "", "begins with {");
      refused(store, file.replace("rungwise-record", "x"), "not a record file");
      refused(store, file.replace("\"version\":1", "\"version\":2"), "another version");

      assertThat(CarriedFile.takeIn(store, file)).isPositive();
    }
  }

  private static void refused(SqliteStore store, String file, String words) {
    assertThatThrownBy(() -> CarriedFile.takeIn(store, file))
        .isInstanceOf(RecordFault.class)
        .hasMessageContaining(words);
    assertThat(store.records().isEmpty()).isTrue();
  }

  @Test
  void whatever_is_changed_in_a_file_it_is_taken_in_whole_or_not_at_all() {
    String file;
    try (var store = SqliteStore.open(folder)) {
      fill(store);
      file = CarriedFile.whole(store);
    }
    var random = new Random(SEED);
    int taken = 0;
    for (int attempt = 0; attempt < 150; attempt++) {
      int at = random.nextInt(file.length());
      char other = (char) (file.charAt(at) ^ (1 << random.nextInt(5)));
      String changed = file.substring(0, at) + other + file.substring(at + 1);
      taken += isTakenIn(top.resolve("try-" + attempt), changed, at) ? 1 : 0;
    }
    assertThat(taken).as("a change of a name or a note does no harm").isBetween(1, 149);
  }

  private static boolean isTakenIn(Path where, String file, int at) {
    try (var store = SqliteStore.open(Files.createDirectory(where))) {
      try {
        CarriedFile.takeIn(store, file);
        assertThat(store.journal().firstBroken()).as("byte %d", at).isEmpty();
        return true;
      } catch (RecordFault told) {
        assertThat(store.records().isEmpty()).as("byte %d", at).isTrue();
        return false;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
