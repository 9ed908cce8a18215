package rungwise.clinic.lifting;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryFlaggedReportTest extends FlaggedReportContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
