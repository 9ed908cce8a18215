package rungwise.clinic.handout;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemorySheetTest extends SheetContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
