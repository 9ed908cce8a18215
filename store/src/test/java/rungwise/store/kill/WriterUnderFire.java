package rungwise.store.kill;

import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Consumer;
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
 * Writes courses through the use cases until its process is killed or its power is cut. Each write
 * that a use case said was done is told, never before it was said.
 */
final class WriterUnderFire {

  static final String ACKNOWLEDGED = "written";

  private final TitrationWorld world;
  private final Consumer<CourseEntry> told;

  /**
   * Writes into an open store.
   *
   * @param first the number from which courses are counted
   * @param told hears of each entry once it was acknowledged
   */
  WriterUnderFire(SqliteStore store, int first, Consumer<CourseEntry> told) {
    this.world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
    this.told = told;
    world.countFrom(first);
  }

  /**
   * Writes until it is killed, or so many courses.
   *
   * @param arguments the folder, the number from which courses are counted, how many courses
   */
  public static void main(String[] arguments) {
    try (SqliteStore store = SqliteStore.open(Path.of(arguments[0]))) {
      var writer =
          new WriterUnderFire(store, Integer.parseInt(arguments[1]), WriterUnderFire::print);
      int courses = Integer.parseInt(arguments[2]);
      for (int course = 0; course < courses; course++) {
        writer.writeCourse();
      }
    }
  }

  /** Writes a course to its first report. */
  void writeCourse() {
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
    told.accept(world.last(course));
  }

  private static void print(CourseEntry entry) {
    System.out.println(ACKNOWLEDGED + " " + entry.number() + " " + entry.id().text());
    System.out.flush();
  }
}
