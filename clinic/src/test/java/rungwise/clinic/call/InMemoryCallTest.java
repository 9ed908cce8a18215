package rungwise.clinic.call;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryCallTest extends CallContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
