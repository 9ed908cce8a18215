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
 */
public record Route(HttpMethod method, String path, Access access, Shown shown, Proof proof) {

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
  }

  static Route get(String path, Access access) {
    return new Route(HttpMethod.GET, path, access, new Shown.Nobody(), Proof.NONE);
  }

  static Route post(String path, Access access) {
    return new Route(HttpMethod.POST, path, access, new Shown.Nobody(), Proof.NONE);
  }

  /** A page about the course in the path. */
  static Route get(String path, Access access, Screen ofCourse) {
    return new Route(HttpMethod.GET, path, access, new Shown.CourseOfPath(ofCourse), Proof.NONE);
  }

  /** A form about the course in the path; when refused it is shown again. */
  static Route post(String path, Access access, Screen ofCourse) {
    return new Route(HttpMethod.POST, path, access, new Shown.CourseOfPath(ofCourse), Proof.NONE);
  }

  /** A page that names several men. */
  static Route list(String path, Access access, Screen ofCourses) {
    return new Route(HttpMethod.GET, path, access, new Shown.CoursesOfPage(ofCourses), Proof.NONE);
  }

  /** A form on a page that names several men; when refused it is shown again. */
  static Route listForm(String path, Access access, Screen ofCourses) {
    return new Route(HttpMethod.POST, path, access, new Shown.CoursesOfPage(ofCourses), Proof.NONE);
  }

  /** The same, as a signature: asked of whoever signs, as the clinic's rule says. */
  Route signing() {
    return new Route(method, path, access, shown, Proof.TO_SIGN);
  }

  /** The same, asked of whoever has set up a second factor. */
  Route proven() {
    return new Route(method, path, access, shown, Proof.IF_SET_UP);
  }
}
