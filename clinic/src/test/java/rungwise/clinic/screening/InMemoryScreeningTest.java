package rungwise.clinic.screening;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryScreeningTest extends ScreeningContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
