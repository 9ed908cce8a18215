package rungwise.store;

import java.nio.file.Path;
import rungwise.clinic.course.CoursePorts;

/** The ports of courses over a store. */
public final class StoreInFolder implements AutoCloseable {

  private final SqliteStore store;

  public StoreInFolder(Path folder) {
    this.store = SqliteStore.open(folder);
  }

  public CoursePorts ports() {
    return new CoursePorts(store.courses(), store.protocolShelf(), store.transactions());
  }

  public SqliteStore store() {
    return store;
  }

  @Override
  public void close() {
    store.close();
  }
}
