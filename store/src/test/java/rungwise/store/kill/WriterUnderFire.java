package rungwise.store.kill;

import java.nio.file.Path;
import java.time.Duration;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/**
 * A process of its own that writes courses through the use cases until somebody kills it. Each
 * write that a use case said was done is told on standard output, never before it was said.
 */
final class WriterUnderFire {

  static final String ACKNOWLEDGED = "written";

  private final TitrationWorld world;

  private WriterUnderFire(TitrationWorld world) {
    this.world = world;
  }

  /**
   * Writes until it is killed, or so many courses.
   *
   * @param arguments the folder, the number from which courses are counted, how many courses
   */
  public static void main(String[] arguments) {
    try (SqliteStore store = SqliteStore.open(Path.of(arguments[0]))) {
      var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
      world.countFrom(Integer.parseInt(arguments[1]));
      var writer = new WriterUnderFire(world);
      int courses = Integer.parseInt(arguments[2]);
      for (int course = 0; course < courses; course++) {
        writer.writeCourse();
      }
    }
  }

  private void writeCourse() {
    CourseId course = world.openUnprepared("vasculogenic", "u100-1");
    tell(course);
    for (Condition condition : Condition.values()) {
      world.answer(course, condition, Answer.NO);
      tell(course);
    }
    world.receive(course, VialForm.of(SamplePreparations.ALPROSTADIL_20));
    tell(course);
    world.pass(Duration.ofDays(1));
    world.signProposed(course);
    tell(course);
    world
        .report(course, ReportForm.at("2026-03-02", "09:00").mark("12").grade("1").exactly("20"))
        .orThrow();
    tell(course);
  }

  private void tell(CourseId course) {
    CourseEntry last = world.last(course);
    System.out.println(ACKNOWLEDGED + " " + last.number() + " " + last.id().text());
    System.out.flush();
  }
}
