package rungwise.clinic.screening;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryExaminationTest extends ExaminationContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
