package rungwise.clinic.reaching;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryReachingTest extends ReachingContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
