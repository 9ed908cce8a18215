package rungwise.web.access;

import org.springframework.http.HttpMethod;

/**
 * One way into the program.
 *
 * @param path a path pattern as handlers write it, such as "/people/{id}/deactivate"
 */
public record Route(HttpMethod method, String path, Access access) {

  static Route get(String path, Access access) {
    return new Route(HttpMethod.GET, path, access);
  }

  static Route post(String path, Access access) {
    return new Route(HttpMethod.POST, path, access);
  }
}
