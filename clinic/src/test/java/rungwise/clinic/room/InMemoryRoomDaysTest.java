package rungwise.clinic.room;

import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;

final class InMemoryRoomDaysTest extends RoomDaysContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
