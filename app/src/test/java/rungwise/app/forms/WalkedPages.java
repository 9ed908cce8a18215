package rungwise.app.forms;

import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPatternParser;
import rungwise.app.server.Visitor;
import rungwise.web.access.Routes;

/** Every page that somebody reaches by links, with its forms. */
final class WalkedPages {

  private static final int MOST_PAGES = 340;

  private WalkedPages() {}

  static Map<String, List<FilledForm>> of(Visitor visitor) {
    var found = new LinkedHashMap<String, List<FilledForm>>();
    var open = new ArrayDeque<String>(List.of("/"));
    Set<String> seen = new HashSet<>(open);
    while (!open.isEmpty() && found.size() < MOST_PAGES) {
      String path = open.remove();
      String body = visitor.get(path).body();
      found.put(path, FilledForm.of(path, body));
      PageForms.of(path, body).links().stream().filter(seen::add).forEach(open::add);
    }
    return found;
  }

  /** The route of a form, as the table has it: "/people/{id}/roles". */
  static String routeOf(String action) {
    return Routes.TABLE.stream()
        .filter(route -> route.method().equals(HttpMethod.POST))
        .map(route -> route.path())
        .filter(
            pattern ->
                PathPatternParser.defaultInstance
                    .parse(pattern)
                    .matches(PathContainer.parsePath(action.replaceFirst("\\?.*$", ""))))
        .findFirst()
        .orElseThrow();
  }
}
