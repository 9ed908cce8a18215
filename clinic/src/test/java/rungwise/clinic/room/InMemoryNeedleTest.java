package rungwise.clinic.room;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryNeedleTest extends NeedleContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
