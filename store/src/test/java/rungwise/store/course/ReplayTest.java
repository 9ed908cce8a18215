package rungwise.store.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.running.RandomCourse;
import rungwise.clinic.titration.Replay;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.files.SampleProtocolReader;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/** Any stored decision can be asked again, with the sample protocol as it is delivered. */
final class ReplayTest {

  private static final long FIRST_SEED = 20_260_302;
  private static final int COURSES = 80;
  private static final int LEAST_DECISIONS = 200;

  @TempDir Path folder;

  private static TitrationWorld world(SqliteStore store) {
    return new TitrationWorld(OpenStores.ports(store), new SampleProtocolReader());
  }

  private void drive() {
    try (var store = SqliteStore.open(folder)) {
      TitrationWorld world = world(store);
      for (int course = 0; course < COURSES; course++) {
        world.setClock(TitrationWorld.START);
        long seed = FIRST_SEED + course;
        world.stored().run(() -> RandomCourse.run(world, seed));
      }
    }
  }

  @Test
  void every_decision_of_random_courses_is_the_same_when_it_is_asked_again_after_a_restart() {
    drive();

    int asked = 0;
    var decisions = new HashSet<String>();
    try (var store = SqliteStore.open(folder)) {
      TitrationWorld world = world(store);
      for (CourseId course : store.courses().all()) {
        for (Written<DoseSigned> signed : world.file(course).inForce(DoseSigned.class)) {
          Replay replay = world.titration().replay(course, signed.entry().id()).orElseThrow();
          assertThat(KeptAdvice.of(replay.again()))
              .as(
                  "seed %d and up, course %s, entry %d",
                  FIRST_SEED, course, signed.entry().number())
              .isEqualTo(signed.fact().advice());
          assertThat(replay.differences()).isEmpty();
          asked++;
          decisions.add(decision(signed.fact()));
        }
      }
      assertThat(store.journal().firstBroken()).isEmpty();
    }
    assertThat(asked).isGreaterThanOrEqualTo(LEAST_DECISIONS);
    assertThat(decisions).contains("START", "STEP_UP", "REPEAT", "STEP_DOWN", "PAUSE", "REFER");
  }

  private static String decision(DoseSigned signed) {
    return signed.advice().values().orElseThrow().kind().name();
  }
}
