package rungwise.clinic.teaching;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryTeachingTest extends TeachingContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
