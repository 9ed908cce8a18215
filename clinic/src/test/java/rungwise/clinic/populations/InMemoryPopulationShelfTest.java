package rungwise.clinic.populations;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryPopulationShelfTest extends PopulationShelfContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
