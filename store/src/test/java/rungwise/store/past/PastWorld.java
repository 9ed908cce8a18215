package rungwise.store.past;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.past.PastHistory;
import rungwise.clinic.past.PastImports;
import rungwise.clinic.past.PastInjection;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.LiftingView;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;
import rungwise.store.OpenStores;
import rungwise.store.SqliteStore;

/**
 * A store with one man's course, and histories that are brought in for him. His record number is
 * that of the first man of the world, in another spelling.
 */
record PastWorld(SqliteStore store, TitrationWorld world, PastImports imports, CourseId course)
    implements AutoCloseable {

  static final PreparationId ALPROSTADIL = new PreparationId("alprostadil-20");

  static PastWorld open(Path folder) {
    SqliteStore store = SqliteStore.open(folder);
    var world = new TitrationWorld(OpenStores.ports(store), new LabelReader());
    var imports =
        new PastImports(
            store.pastHistories(),
            id -> id.equals(ALPROSTADIL) || id.equals(SamplePreparations.ALPROSTADIL_40.id()),
            store.transactions(),
            UUID::randomUUID,
            world::now);
    return new PastWorld(store, world, imports, world.open());
  }

  @Override
  public void close() {
    store.close();
  }

  static SoftAfter minutes(int minutes) {
    return new SoftAfter.Exactly(TimeSpan.ofMinutes(minutes));
  }

  /** Brings these in for him and gives back the id of the import. */
  String bringIn(PastInjection... injections) {
    var plan = imports.plan(List.of(new PastHistory("mr-1", "vasculogenic", List.of(injections))));
    if (!plan.faults().isEmpty()) {
      throw new AssertionError(plan.faults());
    }
    return imports.commit(plan, "history.csv", done -> {});
  }

  /** He had 0.5 mL of half of what the strength 1 stands for. */
  void bringInHalfStrength(SoftAfter soft) {
    bringIn(
        new PastInjection(
            2,
            1,
            Volume.ofMicrolitres(500),
            1,
            Optional.of(0.5),
            Grade.FULLY_FIRM,
            soft,
            Optional.empty()));
  }

  List<GuardRule> blocks() {
    return world.blocks(course);
  }

  boolean isClosed(long microlitres) {
    return world.state(course).advice().verdictsOn(Volume.ofMicrolitres(microlitres)).stream()
        .anyMatch(verdict -> verdict.rule() == GuardRule.VOLUME_CLOSED);
  }

  Reading<Long> review(Account actor, Optional<PreparationId> reference, String reason) {
    return world.lifting().reviewPast(actor, course, reference, world::isInUse, reason);
  }

  /** What waits for a prescriber, as the page of his course shows it. */
  LiftingView lifting() {
    return new CourseViews(world.room().time(), account -> "somebody")
        .of(world.state(course))
        .lifting();
  }
}
