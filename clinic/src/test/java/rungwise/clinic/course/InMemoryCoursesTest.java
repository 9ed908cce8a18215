package rungwise.clinic.course;

final class InMemoryCoursesTest extends CoursesContract {

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }
}
