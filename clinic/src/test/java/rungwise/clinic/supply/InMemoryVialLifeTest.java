package rungwise.clinic.supply;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryVialLifeTest extends VialLifeContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
