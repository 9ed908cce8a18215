package rungwise.clinic.joining;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryJoiningTest extends JoiningContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
