package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.SmartView;
import rungwise.clinic.CannotKeep;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed.Outcome;
import rungwise.clinic.audit.Viewing;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.soundness.Doubts;
import rungwise.web.fault.FaultPage;
import rungwise.web.page.Templates;
import rungwise.web.session.Sessions;

/**
 * The one place that writes down who looks at whom. A page is recorded when its handler has found
 * what to show and before anything is rendered; a handler that writes its answer by itself is
 * recorded before it runs. If that fails, nothing is shown.
 */
final class ViewRecorder implements HandlerInterceptor {

  private static final Logger LOG = LoggerFactory.getLogger(ViewRecorder.class);
  private static final String PAGE = "page";
  private static final Shown NOBODY = new Shown.Nobody();

  private final Viewing viewing;
  private final Templates templates;
  private final Doubts doubts;

  ViewRecorder(Viewing viewing, Templates templates, Doubts doubts) {
    this.viewing = viewing;
    this.templates = templates;
    this.doubts = doubts;
  }

  @Override
  public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
      throws IOException {
    return leavesRendering(handler)
        || isRecorded(request, shownBy(request), Optional.empty())
        || refuse(request, response);
  }

  private static boolean leavesRendering(Object handler) {
    return !(handler instanceof HandlerMethod method)
        || method.getReturnType().getParameterType().equals(ModelAndView.class);
  }

  @Override
  public void postHandle(
      HttpServletRequest request,
      HttpServletResponse response,
      Object handler,
      @Nullable ModelAndView answer)
      throws IOException {
    if (answer == null || isRedirect(answer)) {
      return;
    }
    Optional<Object> page = Optional.ofNullable(answer.getModel().get(PAGE));
    if (!isRecorded(request, shownBy(request), page)) {
      answer.clear();
      refuse(request, response);
    }
  }

  private static boolean isRedirect(ModelAndView answer) {
    return answer.getView() instanceof SmartView view && view.isRedirectView();
  }

  private static Shown shownBy(HttpServletRequest request) {
    return Routes.of(request).map(Route::shown).orElse(NOBODY);
  }

  private boolean isRecorded(HttpServletRequest request, Shown shown, Optional<Object> page) {
    try {
      switch (shown) {
        case Shown.Nobody nobody -> {}
        case Shown.CourseOfPath one -> record(one.screen(), coursesOf(request, page));
        case Shown.CoursesOfPage several -> record(several.screen(), coursesOf(page));
      }
      return true;
    } catch (RuntimeException failure) {
      // Its message may hold what was typed; the kind of failure is enough to go on with.
      LOG.error("A view could not be recorded: {}", failure.getClass().getName());
      if (!(failure instanceof CannotKeep) && doubts.isToBlame(failure)) {
        throw failure; // its own page says that the record is damaged
      }
      return false;
    }
  }

  private void record(Screen screen, List<CourseId> courses) {
    Account actor =
        Sessions.accountNow()
            .orElseThrow(() -> new IllegalStateException("bug: a course shown to nobody"));
    viewing.record(actor.id(), screen, Outcome.SHOWN, courses);
  }

  /** Empty where the path holds no id: there is no such course, so no man is named. */
  private static List<CourseId> courseOf(HttpServletRequest request) {
    Object variables = request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE);
    if (variables instanceof Map<?, ?> found && found.get(Route.COURSE_ID) instanceof String id) {
      return readId(id).stream().toList();
    }
    throw new IllegalStateException("bug: a course without its id in the path");
  }

  /** The course of the path, and those of other men that its page names. */
  private static List<CourseId> coursesOf(HttpServletRequest request, Optional<Object> page) {
    Stream<CourseId> others =
        page
            .filter(NamesCourses.class::isInstance)
            .map(NamesCourses.class::cast)
            .map(NamesCourses::namedCourses)
            .stream()
            .flatMap(List::stream);
    return Stream.concat(courseOf(request).stream(), others).distinct().toList();
  }

  private static List<CourseId> coursesOf(Optional<Object> page) {
    return page.filter(NamesCourses.class::isInstance)
        .map(NamesCourses.class::cast)
        .map(NamesCourses::namedCourses)
        .orElseThrow(() -> new IllegalStateException("bug: a list that hides whom it names"));
  }

  private boolean refuse(HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    FaultPage.NOT_RECORDED.write(templates, request, response);
    return false;
  }

  /** Writes down a wish to look that no role allowed; it stays refused if that fails. */
  void recordRefusal(HttpServletRequest request) {
    String path = request.getRequestURI();
    HttpMethod method = Routes.asRoute(request.getMethod());
    Optional<Account> actor = Sessions.accountNow();
    Optional<Route> route = Routes.find(method, path);
    if (actor.isPresent()
        && method.equals(HttpMethod.GET)
        && route.map(Route::shown).orElse(NOBODY) instanceof Shown.CourseOfPath one) {
      Routes.variable(route.get(), path, Route.COURSE_ID)
          .flatMap(ViewRecorder::readId)
          .ifPresent(course -> recordRefusal(actor.get(), one.screen(), course));
    }
  }

  private static Optional<CourseId> readId(String text) {
    try {
      return Optional.of(new CourseId(text));
    } catch (IllegalArgumentException notAnId) {
      return Optional.empty();
    }
  }

  private void recordRefusal(Account actor, Screen screen, CourseId course) {
    try {
      viewing.record(actor.id(), screen, Outcome.REFUSED, List.of(course));
    } catch (RuntimeException failure) {
      LOG.error("A refused view could not be recorded: {}", failure.getClass().getName());
    }
  }
}
