package rungwise.clinic.supply;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryVialTest extends VialContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
