package rungwise.web.right;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.access.TakenAccess;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.quantities.Reading;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;
import rungwise.web.access.Shown;
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;
import rungwise.web.page.Templates;
import rungwise.web.session.Sessions;

/**
 * Stands before every page and form of a course. Who has no standing right to it says why first,
 * and then goes on where he was; nothing of the man is shown before that is on record.
 */
final class CourseRight implements HandlerInterceptor {

  private static final Logger LOG = LoggerFactory.getLogger(CourseRight.class);
  private static final String TEMPLATE = "right/take-access";

  /** Where he is on the line: one tap, and what 4 hours need stands there already. */
  private static final String OF_A_CALL = "right/take-access-call";

  private static final String COURSE_ID = "id";

  private final CourseAccess access;
  private final Templates templates;

  CourseRight(CourseAccess access, Templates templates) {
    this.access = access;
    this.templates = templates;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    Optional<Account> actor = Sessions.accountNow();
    Optional<CourseId> course = isGuarded(request) ? courseOf(request) : Optional.empty();
    if (actor.isEmpty() || course.isEmpty() || access.isOpen(actor.get(), course.get())) {
      return true;
    }
    var form = TakeAccessForm.of(request);
    if (isRead(request) || !form.isSent()) {
      return ask(request, response, form, Faults.NONE);
    }
    return switch (access.take(actor.get(), course.get(), form.reason(), form.words())) {
      case Reading.Read<TakenAccess> read -> {
        LOG.info("Course {}: access taken by {}", course.get(), actor.get().id());
        yield true;
      }
      case Reading.Refused<TakenAccess> refused -> ask(request, response, form, Faults.of(refused));
    };
  }

  /** The list of who has seen a course is for those who watch, and says nothing of the course. */
  private static boolean isGuarded(HttpServletRequest request) {
    return Routes.of(request).map(Route::shown).orElse(new Shown.Nobody())
            instanceof Shown.CourseOfPath of
        && of.screen() != Screen.VIEWS;
  }

  private static boolean isOfACall(HttpServletRequest request) {
    return Routes.of(request).map(Route::shown).orElse(new Shown.Nobody())
            instanceof Shown.CourseOfPath of
        && of.screen() == Screen.CALL;
  }

  private static Optional<CourseId> courseOf(HttpServletRequest request) {
    Object variables = request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE);
    if (variables instanceof Map<?, ?> found && found.get(COURSE_ID) instanceof String id) {
      try {
        return Optional.of(new CourseId(id));
      } catch (IllegalArgumentException notAnId) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private boolean ask(
      HttpServletRequest request, HttpServletResponse response, TakeAccessForm form, Faults faults)
      throws IOException {
    response.setStatus(
        faults.isEmpty() ? HttpStatus.FORBIDDEN.value() : HttpStatus.UNPROCESSABLE_CONTENT.value());
    String page = request.getRequestURI();
    TakeAccessPage shown =
        isRead(request)
            ? TakeAccessPage.of(
                accessPath(request), List.of(new HeldField("next", page)), form, faults)
            : TakeAccessPage.of(page, HeldField.of(request, TakeAccessForm.FIELDS), form, faults);
    templates.write(
        isOfACall(request) ? OF_A_CALL : TEMPLATE, Map.of("page", shown), request, response);
    return false;
  }

  /** Reading takes nothing: a link from elsewhere must not do it. */
  private static boolean isRead(HttpServletRequest request) {
    return Routes.isRead(request);
  }

  private static String accessPath(HttpServletRequest request) {
    return "/courses/" + courseOf(request).orElseThrow() + "/access";
  }
}
