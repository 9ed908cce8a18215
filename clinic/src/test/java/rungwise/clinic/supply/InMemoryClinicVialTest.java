package rungwise.clinic.supply;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryClinicVialTest extends ClinicVialContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
