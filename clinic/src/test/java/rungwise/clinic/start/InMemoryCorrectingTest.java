package rungwise.clinic.start;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryCorrectingTest extends CorrectingContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
