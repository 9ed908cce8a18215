package rungwise.web.page;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** One field of a form that waits while something else is asked, so that nothing typed is lost. */
public record HeldField(String name, String value) {

  private static final String CSRF = "_csrf";

  /** All fields of a form, without some of them and the proof of its origin. */
  public static List<HeldField> of(HttpServletRequest request, Set<String> without) {
    return request.getParameterMap().entrySet().stream()
        .filter(field -> !field.getKey().equals(CSRF) && !without.contains(field.getKey()))
        .flatMap(
            field ->
                Arrays.stream(field.getValue()).map(value -> new HeldField(field.getKey(), value)))
        .toList();
  }
}
