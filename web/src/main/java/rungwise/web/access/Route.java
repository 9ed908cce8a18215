package rungwise.web.access;

import org.springframework.http.HttpMethod;
import rungwise.clinic.audit.Screen;

/**
 * One way into the program. A route below a course always says which page of the course it shows,
 * also where it is a form: a refused form shows its page again.
 *
 * @param path a path pattern as handlers write it, such as "/people/{id}/deactivate"
 * @param shown which men its pages name
 * @param proof whether the second factor must have been given in this shift
 * @param clock whether it waits while it is not known what time it is
 */
public record Route(
    HttpMethod method, String path, Access access, Shown shown, Proof proof, ByClock clock) {

  /** Whether a route waits while it is not known what time it is. */
  public enum ByClock {
    /** A signature, or anything else that may open something until a date: it waits. */
    HELD,
    /** It is taken at any time: a page, a report, a call, what only stops, and accounts. */
    ALWAYS
  }

  static final String COURSE_ID = "id";

  private static final String BELOW_A_COURSE = "/courses/{";
  private static final String COURSE = BELOW_A_COURSE + COURSE_ID + "}";

  public Route {
    boolean isOfCourse = path.startsWith(COURSE);
    boolean saysSo = shown instanceof Shown.CourseOfPath;
    if (isOfCourse != saysSo || (path.startsWith(BELOW_A_COURSE) && !isOfCourse)) {
      throw new IllegalArgumentException(
          "bug: " + path + " must begin with " + COURSE + " and say which page of it is shown");
    }
    if (proof == Proof.TO_SIGN && clock == ByClock.ALWAYS) {
      throw new IllegalArgumentException("bug: " + path + " signs, whatever the time is");
    }
  }

  private static Route read(String path, Access access, Shown shown) {
    return new Route(HttpMethod.GET, path, access, shown, Proof.NONE, ByClock.ALWAYS);
  }

  private static Route form(String path, Access access, Shown shown) {
    return new Route(HttpMethod.POST, path, access, shown, Proof.NONE, ByClock.HELD);
  }

  static Route get(String path, Access access) {
    return read(path, access, new Shown.Nobody());
  }

  static Route post(String path, Access access) {
    return form(path, access, new Shown.Nobody());
  }

  /** A page about the course in the path. */
  static Route get(String path, Access access, Screen ofCourse) {
    return read(path, access, new Shown.CourseOfPath(ofCourse));
  }

  /** A form about the course in the path; when refused it is shown again. */
  static Route post(String path, Access access, Screen ofCourse) {
    return form(path, access, new Shown.CourseOfPath(ofCourse));
  }

  /** A page that names several men. */
  static Route list(String path, Access access, Screen ofCourses) {
    return read(path, access, new Shown.CoursesOfPage(ofCourses));
  }

  /** A form on a page that names several men; when refused it is shown again. */
  static Route listForm(String path, Access access, Screen ofCourses) {
    return form(path, access, new Shown.CoursesOfPage(ofCourses));
  }

  /** The same, as a signature: asked of whoever signs, as the clinic's rule says. */
  Route signing() {
    return new Route(method, path, access, shown, Proof.TO_SIGN, ByClock.HELD);
  }

  /** The same, asked of whoever has set up a second factor. */
  Route proven() {
    return new Route(method, path, access, shown, Proof.IF_SET_UP, clock);
  }

  /** The same, taken whatever the clock says: what somebody says now, and what is no signature. */
  Route always() {
    return new Route(method, path, access, shown, proof, ByClock.ALWAYS);
  }
}
