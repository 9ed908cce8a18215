package rungwise.clinic.titration;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryLabelDecidesTest extends LabelDecidesContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
