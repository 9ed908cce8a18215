package rungwise.store.screening;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.io.TempDir;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.screening.ScreeningContract;
import rungwise.store.OpenStores;

final class SqlScreeningTest extends ScreeningContract {

  @TempDir Path folder;
  @AutoClose private final OpenStores stores = new OpenStores();

  @Override
  protected CoursePorts open() {
    return stores.open(folder);
  }
}
