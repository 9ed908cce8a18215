package rungwise.clinic.populations;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemorySignedPopulationsTest extends SignedPopulationsContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
