package rungwise.store.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.titration.SignDraft;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.quantities.Reading;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/** Two people do the same thing at the same moment: one does it, the other is told. */
final class AtTheSameTimeTest {

  private static final int TIMES = 10;

  @TempDir Path folder;
  private SqliteStore store;
  private TitrationWorld world;
  private ExecutorService two;

  @BeforeEach
  void open() {
    store = SqliteStore.open(folder);
    world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
    two = Executors.newFixedThreadPool(2);
  }

  @AfterEach
  void close() {
    two.close();
    store.close();
  }

  /** Does it from two threads that wait for each other first. */
  private <T> List<Reading<T>> atOnce(Callable<Reading<T>> work)
      throws ExecutionException, InterruptedException {
    var ready = new CyclicBarrier(2);
    Callable<Reading<T>> together =
        () -> {
          ready.await();
          return work.call();
        };
    Future<Reading<T>> one = two.submit(together);
    Future<Reading<T>> other = two.submit(together);
    return List.of(one.get(), other.get());
  }

  private static <T> void assertOneIsRefused(List<Reading<T>> both, String words) {
    assertThat(both).filteredOn(reading -> reading.found().isPresent()).hasSize(1);
    assertThat(both).flatExtracting(Reading::faults).singleElement().asString().startsWith(words);
  }

  @Test
  void of_two_signatures_of_the_same_advice_one_is_in_force()
      throws ExecutionException, InterruptedException {
    for (int time = 0; time < TIMES; time++) {
      CourseId course = world.open();
      SignDraft draft = world.proposed(course);
      int before = world.file(course).entries().size();

      List<Reading<Long>> both = atOnce(() -> world.sign(course, draft));

      assertOneIsRefused(both, "The record has changed since this page was opened");
      assertThat(world.file(course).inForce(DoseSigned.class)).hasSize(1);
      assertThat(world.file(course).entries()).hasSize(before + 1);
    }
    assertThat(store.journal().firstBroken()).isEmpty();
  }

  @Test
  void of_two_who_end_an_observation_one_writes_the_report()
      throws ExecutionException, InterruptedException {
    var forms = new VisitForms(world);
    for (int time = 0; time < TIMES; time++) {
      CourseId course = world.open();
      world.signProposed(course);
      world.room().start(Staff.EDUCATOR, course, forms.start("12")).orThrow();
      var observation = world.lastEntry(course);
      world.pass(Duration.ofMinutes(30));
      EndDraft draft = forms.end("2", "none_found", Set.of(), "");

      List<Reading<Long>> both =
          atOnce(() -> world.room().end(Staff.EDUCATOR, course, observation, draft));

      assertOneIsRefused(both, "This observation was ended or changed meanwhile");
      assertThat(world.file(course).reports()).hasSize(1);
      assertThat(world.file(course).notesOf(observation)).hasSize(1);
    }
  }

  @Test
  void of_two_who_close_the_day_one_does() throws ExecutionException, InterruptedException {
    for (int time = 0; time < TIMES; time++) {
      assertOneIsRefused(
          atOnce(() -> world.room().closeDay(Staff.EDUCATOR)), "The day is closed already.");
      world.pass(Duration.ofDays(1));
    }
  }
}
