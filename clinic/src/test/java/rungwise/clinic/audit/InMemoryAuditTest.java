package rungwise.clinic.audit;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryAuditTest extends AuditContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
