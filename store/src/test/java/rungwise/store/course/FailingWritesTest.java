package rungwise.store.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.screening.ScreeningForm;
import rungwise.clinic.soundness.Flaw;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.store.OpenStores;
import rungwise.store.RawDatabase;
import rungwise.store.SqliteStore;

/** Whichever statement of a use case fails, the store is as it was before. */
final class FailingWritesTest {

  private static final String INSERT = "insert";
  private static final String UPDATE = "update";

  @TempDir Path folder;
  private SqliteStore store;
  private RawDatabase raw;
  private TitrationWorld world;

  @BeforeEach
  void open() throws SQLException {
    store = SqliteStore.open(folder);
    raw = RawDatabase.in(folder);
    world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
  }

  @AfterEach
  void close() throws SQLException {
    raw.close();
    store.close();
  }

  /** What of the whole store can be seen from outside, but for the instants of the rows. */
  private List<@Nullable Object> everything() throws SQLException {
    return raw.column(
        "select seq || id || kind || seal from entry"
            + " union all select 'head' || seq || head_seal from journal_head"
            + " union all select 'opened' || entry_id from course_opened"
            + " union all select 'screened' || entry_id from screened"
            + " union all select 'answered' || entry_id || line from screened_answer"
            + " union all select 'noted' || entry_id from observation_noted"
            + " union all select 'report' || entry_id from injection_reported"
            + " union all select 'cause' || entry_id || line from injection_reported_cause"
            + " union all select 'plan' || entry_id from plan_chosen"
            + " union all select 'dose' || entry_id from dose_signed"
            + " union all select 'rung' || entry_id || line from dose_signed_rung"
            + " union all select 'hold' || entry_id || line from dose_signed_hold"
            + " union all select 'read' || entry_id || line from dose_signed_hold_fact");
  }

  private int entries() throws SQLException {
    return raw.column("select seq from entry").size();
  }

  private void assertUndone(String change, String table, String when, Runnable work)
      throws SQLException {
    List<@Nullable Object> before = everything();
    raw.run(
        "create trigger broken before %s on %s when %s begin select raise(abort, 'broken'); end"
            .formatted(change, table, when));

    assertThatThrownBy(work::run)
        .as("%s %s when %s", change, table, when)
        .hasMessageContaining("broken");

    raw.run("drop trigger broken");
    assertThat(everything()).isEqualTo(before);
    assertThat(store.journal().firstBroken()).isEmpty();
  }

  @Test
  void a_course_is_opened_whole_or_not_at_all() throws SQLException {
    Runnable open = () -> world.openUnprepared("vasculogenic", "u100-1");
    int next = entries() + 1;
    for (String table : List.of("course_opened", "plan_chosen")) {
      assertUndone(INSERT, table, "true", open);
    }
    for (int seq = next; seq <= next + 1; seq++) {
      assertUndone(INSERT, "entry", "new.seq = " + seq, open);
      assertUndone(UPDATE, "journal_head", "new.seq = " + seq, open);
    }

    assertThat(store.courses().all()).isEmpty();
    CourseId course = world.openUnprepared("vasculogenic", "u100-1");
    assertThat(world.file(course).entries()).hasSize(2);
  }

  @Test
  void a_screening_is_written_whole_or_not_at_all() throws SQLException {
    CourseId course = world.openUnprepared("vasculogenic", "u100-1");
    Runnable answer =
        () -> world.screenings().answer(Staff.EDUCATOR, course, ScreeningForm.all(Answer.NO));

    for (String table : List.of("entry", "screened")) {
      assertUndone(INSERT, table, "true", answer);
    }
    for (int line = 1; line <= Condition.values().length; line++) {
      assertUndone(INSERT, "screened_answer", "new.line = " + line, answer);
    }
    assertUndone(UPDATE, "journal_head", "true", answer);

    assertThat(world.file(course).screened()).isEmpty();
    answer.run();
    assertThat(world.file(course).screening().open(SamplePreparations.ALPROSTADIL_20)).isEmpty();
  }

  @Test
  void an_observation_ends_whole_or_not_at_all() throws SQLException {
    CourseId course = world.open();
    Runnable end = endOfAnObservation(course);

    for (String table :
        List.of("observation_noted", "injection_reported", "injection_reported_cause")) {
      assertUndone(INSERT, table, "true", end);
    }
    int next = entries() + 1;
    for (int seq = next; seq <= next + 1; seq++) {
      assertUndone(INSERT, "entry", "new.seq = " + seq, end);
      assertUndone(UPDATE, "journal_head", "new.seq = " + seq, end);
    }

    assertThat(world.file(course).observing()).hasSize(1);
    end.run();
    assertThat(world.file(course).observing()).isEmpty();
    assertThat(world.file(course).reports()).hasSize(1);
  }

  /** He was injected, and 45 minutes later it is over. */
  private Runnable endOfAnObservation(CourseId course) {
    world.signProposed(course);
    world.pass(Duration.ofMinutes(5));
    var start =
        new StartDraft("2026-03-02", "10:05", Occurrence.NOT_SAID, "12", "", "", "", "", "", false);
    world.room().start(Staff.EDUCATOR, course, start).orThrow();
    var observation = world.lastEntry(course);
    world.pass(Duration.ofMinutes(45));
    var end =
        new EndDraft(
            "2026-03-02",
            "10:45",
            Occurrence.NOT_SAID,
            false,
            "3",
            "one_found",
            Set.of("LEAK"),
            "2",
            "120",
            "70",
            "66",
            "well");
    return () -> world.room().end(Staff.EDUCATOR, course, observation, end).orThrow();
  }

  @Test
  void a_dose_is_signed_whole_or_not_at_all() throws SQLException {
    CourseId course = world.open("unknown", "u100-1");
    int rungs = world.state(course).question().ladder().rungs().size();
    Runnable sign =
        () ->
            world
                .sign(course, world.overriding(course, "nurse", GuardRule.HARD_TO_MEASURE))
                .orThrow();

    for (String table :
        List.of("entry", "dose_signed", "dose_signed_hold", "dose_signed_hold_fact")) {
      assertUndone(INSERT, table, "true", sign);
    }
    for (int line = 1; line <= rungs; line++) {
      assertUndone(INSERT, "dose_signed_rung", "new.line = " + line, sign);
    }
    assertUndone(UPDATE, "journal_head", "true", sign);

    assertThat(world.file(course).signedDose()).isEmpty();
    sign.run();
    assertThat(world.state(course).mayInject().isClear()).isTrue();
    assertThat(rungs).isGreaterThan(2);
  }

  @Test
  void a_row_that_another_program_removed_is_told_when_the_course_is_read() throws SQLException {
    CourseId course = world.open();
    try (var careless = RawDatabase.withoutTriggers(folder)) {
      careless.run("delete from plan_chosen");
    }

    assertThat(world.file(course).flaws())
        .extracting(Flaw::what)
        .containsExactly(Flaw.What.UNREADABLE);
    assertThatThrownBy(() -> world.state(course)).isInstanceOf(UnreadableRecord.class);
  }
}
