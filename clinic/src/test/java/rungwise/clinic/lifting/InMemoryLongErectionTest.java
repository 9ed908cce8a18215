package rungwise.clinic.lifting;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryLongErectionTest extends LongErectionContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
