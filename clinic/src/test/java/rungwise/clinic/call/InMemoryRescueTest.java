package rungwise.clinic.call;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryRescueTest extends RescueContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
