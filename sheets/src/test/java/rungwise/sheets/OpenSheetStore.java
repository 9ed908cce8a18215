package rungwise.sheets;

import java.nio.file.Path;
import rungwise.clinic.course.CoursePorts;
import rungwise.store.SqliteStore;

/** A store of courses for one test. */
record OpenSheetStore(SqliteStore store) implements AutoCloseable {

  OpenSheetStore(Path folder) {
    this(SqliteStore.open(folder));
  }

  CoursePorts ports() {
    return new CoursePorts(
        store.courses(),
        store.protocolShelf(),
        store.populationShelf(),
        store.audit(),
        store.roomDays(),
        store.clinicVials(),
        store.signedWords(),
        store.pastHistories(),
        store.transactions());
  }

  @Override
  public void close() {
    store.close();
  }
}
