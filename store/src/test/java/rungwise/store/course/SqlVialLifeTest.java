package rungwise.store.course;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.supply.VialLifeContract;
import rungwise.store.OpenStores;

final class SqlVialLifeTest extends VialLifeContract {

  @TempDir Path folder;
  @AutoClose private final OpenStores stores = new OpenStores();

  @Override
  protected CoursePorts open() {
    return stores.open(folder);
  }
}
