package rungwise.store.access;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.access.CourseAccessContract;
import rungwise.clinic.access.TakenAccesses;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.Account;
import rungwise.clinic.titration.Staff;
import rungwise.store.OpenStores;
import rungwise.store.SampleEntries;
import rungwise.store.SqliteStore;

final class SqlCourseAccessTest extends CourseAccessContract {

  private final SqliteStore store;

  SqlCourseAccessTest(@TempDir Path folder) {
    store = SqliteStore.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Override
  protected CoursePorts open() {
    for (Account account : List.of(Staff.PRESCRIBER, Staff.ON_CALL, Staff.AUDITOR)) {
      SampleEntries.run(store, () -> SampleEntries.invite(store, account));
    }
    return OpenStores.ports(store);
  }

  @Override
  protected TakenAccesses taken() {
    return store.takenAccesses();
  }
}
