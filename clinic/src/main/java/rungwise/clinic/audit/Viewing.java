package rungwise.clinic.audit;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import rungwise.clinic.Transactions;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.people.AccountId;

/** The use cases about views: writing them down, and reading who has seen a course. */
public final class Viewing {

  /** How many views one part of the list holds. */
  public static final int ON_ONE_PAGE = 50;

  private final Audit audit;
  private final Courses courses;
  private final Transactions transactions;
  private final InstantSource clock;

  public Viewing(Audit audit, Courses courses, Transactions transactions, InstantSource clock) {
    this.audit = audit;
    this.courses = courses;
    this.transactions = transactions;
    this.clock = clock;
  }

  /**
   * Writes down that somebody is about to see a page, or was refused it. Only when this has
   * returned may the page be sent. A page that names nobody leaves no entry.
   */
  public void record(AccountId by, Screen screen, Viewed.Outcome outcome, List<CourseId> named) {
    if (named.isEmpty()) {
      return;
    }
    var viewed = new Viewed(by, clock.instant(), screen, outcome, named);
    transactions.inTransaction(
        () -> {
          audit.append(viewed);
          return viewed;
        });
  }

  /**
   * Who has seen a course: {@value #ON_ONE_PAGE} views, the newest first; empty if there is no such
   * course.
   *
   * @param before the number before which the part begins; empty for the newest
   */
  public Optional<CourseLooks> of(CourseId course, OptionalLong before) {
    return courses.find(course).map(file -> looks(file, before.orElse(Long.MAX_VALUE)));
  }

  private CourseLooks looks(CourseFile file, long before) {
    List<Look> found = audit.of(file.id(), before, ON_ONE_PAGE + 1);
    boolean isMore = found.size() > ON_ONE_PAGE;
    List<Look> shown = isMore ? found.subList(0, ON_ONE_PAGE) : found;
    OptionalLong older = isMore ? OptionalLong.of(shown.getLast().number()) : OptionalLong.empty();
    return new CourseLooks(file.id(), file.patient(), shown, older);
  }

  /** Every course, the one opened last first, for choosing one of them. */
  public List<CourseFile> courses() {
    return courses.all().stream().flatMap(id -> courses.readable(id).stream()).toList();
  }
}
