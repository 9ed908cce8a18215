package rungwise.clinic.lifting;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryTabletTest extends TabletContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
