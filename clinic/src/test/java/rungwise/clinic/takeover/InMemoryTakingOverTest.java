package rungwise.clinic.takeover;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryTakingOverTest extends TakingOverContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
