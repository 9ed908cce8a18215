package rungwise.clinic.titration;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryReportingTest extends ReportingContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
