package rungwise.clinic.protocols;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryProtocolShelfTest extends ProtocolShelfContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
