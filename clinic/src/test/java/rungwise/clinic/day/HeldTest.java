package rungwise.clinic.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.clinic.course.CourseFact.PlanChosen;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.DayView;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.RandomCourse;
import rungwise.clinic.titration.TitrationWorld;

/**
 * What the day's list says of a course holds as long as it says that it does: over courses in which
 * anything happens in any order, after each entry, at each instant that is named, a millisecond
 * before it, and at instants that nobody named.
 */
final class HeldTest {

  private static final int TURNS = 6;
  private static final int BETWEEN = 3;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void what_is_said_holds_until_the_instant_that_it_names(long seed) {
    var world = new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
    world.setClock(TitrationWorld.START);
    var made = new AtomicReference<CourseId>();
    world.stored().run(() -> made.set(RandomCourse.run(world, seed)));
    CourseId course = Objects.requireNonNull(made.get());
    var reader = new CourseReader(world.ports());
    var views = new CourseViews(world.ports().time(), by -> "somebody");
    var random = new Random(seed);
    CourseFile whole = world.file(course);
    int held = 0;
    for (var entry : whole.entries()) {
      CourseFile file = whole.upTo(entry.number());
      if (file.inForce(PlanChosen.class).isEmpty()) {
        continue; // it is being opened
      }
      Instant now = entry.recordedAt();
      for (int turn = 0; turn < TURNS; turn++) {
        CourseState state = reader.state(file, now);
        Instant at = now;
        Instant until =
            new Held(state, world.ports().time(), day -> reader.byDay(file, at, day)).until();
        assertThat(until).isAfter(now);
        DayView said = views.dayOf(state);
        assertThat(views.dayOf(reader.state(file, until.minusMillis(1))))
            .as("seed %d, entry %d, from %s until %s", seed, entry.number(), now, until)
            .isEqualTo(said);
        long span = Duration.between(now, until).toMillis();
        for (int between = 0; between < BETWEEN; between++) {
          Instant inside = now.plusMillis((long) (random.nextDouble() * span));
          assertThat(views.dayOf(reader.state(file, inside)))
              .as("seed %d, entry %d, at %s", seed, entry.number(), inside)
              .isEqualTo(said);
          held++;
        }
        now = until;
      }
    }
    assertThat(held).isGreaterThan(100);
  }
}
