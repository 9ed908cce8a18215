package rungwise.clinic.lifting;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryUpkeepTest extends UpkeepContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
