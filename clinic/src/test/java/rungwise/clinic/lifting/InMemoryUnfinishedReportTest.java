package rungwise.clinic.lifting;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryUnfinishedReportTest extends UnfinishedReportContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
