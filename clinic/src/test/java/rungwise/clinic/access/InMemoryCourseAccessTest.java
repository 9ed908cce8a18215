package rungwise.clinic.access;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.people.AccountId;

class InMemoryCourseAccessTest extends CourseAccessContract {

  private final Kept kept = new Kept();

  @Override
  protected CoursePorts open() {
    return InMemoryRecord.ports();
  }

  @Override
  protected TakenAccesses taken() {
    return kept;
  }

  /** What was taken, numbered from 1. */
  private static final class Kept implements TakenAccesses {

    private final List<TakenAccess.Numbered> all = new ArrayList<>();

    @Override
    public void append(TakenAccess access) {
      all.add(new TakenAccess.Numbered(all.size() + 1L, access));
    }

    @Override
    public boolean isGood(AccountId by, CourseId course, Instant at) {
      return all.stream()
          .map(TakenAccess.Numbered::access)
          .filter(access -> access.by().equals(by) && access.course().equals(course))
          .anyMatch(access -> at.isBefore(access.goodUntil()));
    }

    @Override
    public List<TakenAccess.Numbered> list(long before, int most) {
      return all.reversed().stream()
          .filter(numbered -> numbered.number() < before)
          .limit(most)
          .toList();
    }
  }
}
