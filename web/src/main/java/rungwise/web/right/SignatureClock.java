package rungwise.web.right;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.clock.ClockCheck;
import rungwise.web.access.Route.ByClock;
import rungwise.web.access.Routes;
import rungwise.web.page.HeldField;
import rungwise.web.page.Templates;

/**
 * Stands before every signature: while it is not known what time it is, none is given. The form
 * that was sent is not lost, and is sent again from the page that says so.
 */
final class SignatureClock implements HandlerInterceptor {

  private static final String TEMPLATE = "right/unsigned";

  private final ClockCheck check;
  private final Templates templates;

  SignatureClock(ClockCheck check, Templates templates) {
    this.check = check;
    this.templates = templates;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    boolean isHeld = Routes.of(request).filter(route -> route.clock() == ByClock.HELD).isPresent();
    if (!isHeld) {
      return true;
    }
    ClockBelief belief = check.belief();
    Optional<String> doubt = belief.doubt();
    if (doubt.isEmpty()) {
      return true;
    }
    response.setStatus(HttpStatus.CONFLICT.value());
    var page =
        new UnsignedPage(
            doubt.get(),
            belief.isAskedOfPeople(),
            request.getRequestURI(),
            HeldField.of(request, Set.of()));
    templates.write(TEMPLATE, Map.of("page", page), request, response);
    return false;
  }
}
