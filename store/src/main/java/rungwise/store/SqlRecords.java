package rungwise.store;

import java.util.function.Consumer;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.record.RecordFault;
import rungwise.clinic.record.RecordedEntry;
import rungwise.clinic.record.Records;
import rungwise.store.journal.CarriedEntries;

/** The whole record of a store, to be carried to another one. */
final class SqlRecords implements Records {

  private final SqliteStore store;
  private final CarriedEntries entries;

  SqlRecords(SqliteStore store, CarriedEntries entries) {
    this.store = store;
    this.entries = entries;
  }

  @Override
  public boolean isEmpty() {
    return entries.isEmpty();
  }

  @Override
  public void forEach(Consumer<RecordedEntry> each) {
    entries.forEach(each);
  }

  @Override
  public void append(RecordedEntry entry) {
    entries.append(entry);
  }

  @Override
  public void readAll() {
    check("an account", () -> store.accounts().all());
    check("a preparation", () -> store.preparations().inUse());
    check("a syringe", () -> store.syringes().kept());
    check("a protocol", () -> store.protocolShelf().all());
    check("a population", () -> store.populationShelf().all());
    check("a past history", () -> store.pastHistories().all());
    check("a closed day", () -> store.roomDays().lastClosed());
    check("a vial of the clinic", () -> store.clinicVials().kept());
    check("the list of courses", () -> store.courses().all().forEach(this::readCourse));
  }

  private void readCourse(CourseId id) {
    check("course " + id, () -> store.courses().find(id).ifPresent(SqlRecords::requireWhole));
  }

  private static void requireWhole(CourseFile file) {
    if (!file.isSound()) {
      throw new IllegalArgumentException(file.flaws().getFirst().words());
    }
    requireOrder(file);
  }

  /** What is corrected must stand in the same course, before its correction. */
  private static void requireOrder(CourseFile file) {
    file.entries()
        .forEach(
            entry ->
                entry
                    .corrects()
                    .map(file::entry)
                    .filter(earlier -> earlier.number() >= entry.number())
                    .ifPresent(
                        later -> {
                          throw new IllegalArgumentException("corrected before it was written");
                        }));
  }

  private static void check(String what, Runnable reading) {
    try {
      reading.run();
    } catch (RecordFault told) {
      throw told;
    } catch (RuntimeException e) {
      throw new RecordFault(what + " cannot be read, so nothing was taken in", e);
    }
  }
}
