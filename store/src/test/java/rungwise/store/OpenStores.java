package rungwise.store;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.course.CoursePorts;

/** The stores that a test has opened, closed together at its end. */
public final class OpenStores implements AutoCloseable {

  private static final int ONE_READER = 1;

  private final List<SqliteStore> open = new ArrayList<>();

  /**
   * The ports of courses over a store that is opened here. One connection reads, so that what takes
   * a second one while it holds the first never gets it.
   */
  public CoursePorts open(Path folder) {
    SqliteStore store = SqliteStore.open(folder, ONE_READER);
    open.add(store);
    return ports(store);
  }

  /** The ports of courses over a store. */
  public static CoursePorts ports(SqliteStore store) {
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
    open.forEach(SqliteStore::close);
  }
}
