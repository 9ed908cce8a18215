package rungwise.clinic.running;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryRunningTest extends RunningContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
