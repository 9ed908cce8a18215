package rungwise.clinic.start;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryStartingTest extends StartingContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
