package rungwise.store.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.store.CarriedFile;
import rungwise.store.OpenStores;
import rungwise.store.RawDatabase;
import rungwise.store.SqliteStore;

/** Overrides that were written before it was kept what they had read. */
final class OldOverridesTest {

  @TempDir Path folder;
  @TempDir Path another;

  @Test
  void an_override_without_facts_is_read_and_lifts_nothing_that_has_facts() throws SQLException {
    try (var store = SqliteStore.open(folder);
        var raw = RawDatabase.in(folder)) {
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      CourseId course = world.open("unknown", "u100-1");
      world.sign(course, world.overriding(course, "nurse", GuardRule.HARD_TO_MEASURE)).orThrow();
      String old = world.file(course).signedDose().orElseThrow().entry().id().text();
      assertThat(world.blocks(course)).isEmpty();

      for (String table : List.of("dose_signed_hold_fact", "dose_signed_hold")) {
        raw.run("drop trigger " + table + "_is_not_removed");
        raw.run("delete from " + table);
      }
      raw.run("insert into dose_signed_override values ('" + old + "', 1, 'hard_to_measure')");
      assertReadAsOld(CarriedFile.whole(store), course);
    }
  }

  /** The record of before, as it was sealed then. */
  private void assertReadAsOld(String file, CourseId course) {
    try (var before = SqliteStore.open(another)) {
      CarriedFile.takeIn(before, file);
      var world = new TitrationWorld(OpenStores.ports(before), new LabelReader());

      assertThat(world.file(course).signedDose().orElseThrow().fact().overridden())
          .containsExactly(
              new OverriddenHold(GuardRule.HARD_TO_MEASURE, List.of(), Optional.empty()));
      assertThat(world.blocks(course)).containsExactly(GuardRule.HARD_TO_MEASURE);
    }
  }
}
