package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.guard.GuardRule;
import rungwise.store.RecordCheck;
import rungwise.store.journal.Inspected;

/** An older copy of the database is put back under a clinic that had gone on. */
class ShorterRecordTest {

  @TempDir Path folder;

  private OpenClinic open() {
    return OpenClinic.in(folder, InstantSource.system());
  }

  private void putBackAnOlderCopy(@TempDir Path elsewhere) throws IOException {
    var story = new StoryClock(InstantSource.system());
    Path database = folder.resolve("rungwise.db");
    try (OpenClinic clinic = OpenClinic.in(folder, story)) {
      DemoClinic.fill(clinic, story, ZoneOffset.UTC);
    }
    Files.copy(database, elsewhere.resolve("older.db"));
    try (OpenClinic clinic = open()) {
      clinic.people().authenticate("nobody", "wrong");
    }
    Files.copy(elsewhere.resolve("older.db"), database, StandardCopyOption.REPLACE_EXISTING);
  }

  private static List<GuardRule> stops(OpenClinic clinic) {
    CourseState state =
        clinic.courseCases(new ClinicTime(ZoneOffset.UTC)).titration().all().getFirst();
    return state.mayInject().verdicts().stream()
        .map(verdict -> verdict.rule())
        .filter(rule -> rule == GuardRule.RECORD_NOT_SOUND)
        .toList();
  }

  @Test
  void it_stops_every_course_until_somebody_says_that_it_was_meant(@TempDir Path elsewhere)
      throws IOException {
    putBackAnOlderCopy(elsewhere);

    try (OpenClinic clinic = open()) {
      assertThat(stops(clinic)).hasSize(1);
      assertThatThrownBy(() -> clinic.acceptShorterRecord(" ")).isInstanceOf(WrongUse.class);
      clinic.acceptShorterRecord("the disk failed; the copy of Monday is the newest");
      assertThat(stops(clinic)).isEmpty();
      assertThatThrownBy(() -> clinic.acceptShorterRecord("again"))
          .isInstanceOf(WrongUse.class)
          .hasMessageContaining("start without it");
    }
    assertThat(RecordCheck.of(folder, Optional.empty())).isInstanceOf(Inspected.Whole.class);
  }
}
