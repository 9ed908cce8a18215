package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.people.Role;

/**
 * The one table of who may go where, and which men are named there. What is not in it is open to
 * nobody: a new handler needs a row here before anyone can reach it.
 */
public final class Routes {

  private static final Access ANYONE = new Access.Anyone();
  private static final Access SIGNED_IN = new Access.SignedIn();
  private static final Access CLINICAL =
      new Access.AnyOf(
          Set.of(
              Role.PRESCRIBER, Role.NURSE_EDUCATOR, Role.ON_CALL_CLINICIAN, Role.PROGRAMME_LEAD));
  private static final Access OPENS_COURSES =
      new Access.AnyOf(Set.of(Role.PRESCRIBER, Role.NURSE_EDUCATOR));
  private static final Access REPORTS =
      new Access.AnyOf(Set.of(Role.PRESCRIBER, Role.NURSE_EDUCATOR, Role.ON_CALL_CLINICIAN));
  private static final Access PRESCRIBER = new Access.AnyOf(Set.of(Role.PRESCRIBER));
  private static final Access KEEPER =
      new Access.AnyOf(Set.of(Role.PRESCRIBER, Role.PROGRAMME_LEAD));
  private static final Access LEAD = new Access.AnyOf(Set.of(Role.PROGRAMME_LEAD));
  private static final Access RECORD_KEEPER =
      new Access.AnyOf(Set.of(Role.PROGRAMME_LEAD, Role.ADMINISTRATOR));
  private static final Access ADMINISTRATOR = new Access.AnyOf(Set.of(Role.ADMINISTRATOR));
  private static final Access ANSWERS =
      new Access.AnyOf(Set.of(Role.PRESCRIBER, Role.PROGRAMME_LEAD, Role.ADMINISTRATOR));
  private static final Access WATCHER = new Access.AnyOf(Set.of(Role.ADMINISTRATOR, Role.AUDITOR));

  /** Every route, in the order of the guide. */
  public static final List<Route> TABLE =
      List.of(
          Route.get("/assets/{name}", ANYONE),
          Route.get("/sign-in", ANYONE),
          Route.post("/sign-in", ANYONE).always(),
          Route.post("/sign-in/passkey/questions", ANYONE).always(),
          Route.post("/sign-in/passkey", ANYONE).always(),
          Route.get("/sign-in/clinic", ANYONE),
          Route.get("/sign-in/clinic/return", ANYONE),
          Route.post("/sign-out", ANYONE).always(),
          Route.get("/first-start", ANYONE),
          Route.post("/first-start", ANYONE).always(),
          Route.get("/welcome", ANYONE),
          Route.post("/welcome", ANYONE).always(),
          Route.get("/call", ANYONE),
          Route.get("/call/rescue", ANYONE),
          Route.get("/call-book", SIGNED_IN),
          Route.post("/call-book/protocol", PRESCRIBER).signing(),
          Route.post("/call-book/departments", RECORD_KEEPER).always(),
          Route.post("/call-book/departments/remove", RECORD_KEEPER).always(),
          Route.get("/call-book/print", SIGNED_IN),
          Route.post("/call-book/print", SIGNED_IN).always(),
          Route.get("/sheet", ANYONE),
          Route.get("/words", CLINICAL),
          Route.post("/words/sign", PRESCRIBER).signing(),
          Route.list("/", SIGNED_IN, Screen.DAY_LIST),
          Route.get("/changes", CLINICAL),
          Route.get("/men", CLINICAL),
          Route.listForm("/men", CLINICAL, Screen.SEARCH).always(),
          Route.get("/courses/new", OPENS_COURSES),
          Route.post("/courses/new", OPENS_COURSES).always(),
          Route.get("/courses/{id}", CLINICAL, Screen.COURSE),
          Route.post("/courses/{id}/access", CLINICAL, Screen.COURSE).always(),
          Route.get("/courses/{id}/call", CLINICAL, Screen.CALL),
          Route.post("/courses/{id}/call", REPORTS, Screen.CALL).always(),
          Route.get("/courses/{id}/call/letter", CLINICAL, Screen.CALL),
          Route.get("/courses/{id}/call/rescue", CLINICAL, Screen.CALL),
          Route.post("/courses/{id}/call/rescue", REPORTS, Screen.CALL).always(),
          Route.get("/courses/{id}/reach", CLINICAL, Screen.REACHING),
          Route.post("/courses/{id}/reach", REPORTS, Screen.REACHING).always(),
          Route.get("/courses/{id}/running", CLINICAL, Screen.RUNNING),
          Route.post("/courses/{id}/running/pause", REPORTS, Screen.RUNNING).always(),
          Route.post("/courses/{id}/running/resume", PRESCRIBER, Screen.RUNNING).signing(),
          Route.post("/courses/{id}/running/end", PRESCRIBER, Screen.RUNNING).signing(),
          Route.post("/courses/{id}/running/reopen", PRESCRIBER, Screen.RUNNING).signing(),
          Route.post("/courses/{id}/running/identity", PRESCRIBER, Screen.RUNNING).signing(),
          Route.get("/courses/{id}/same", CLINICAL, Screen.SAME_MAN),
          Route.post("/courses/{id}/same/join", PRESCRIBER, Screen.SAME_MAN).signing(),
          Route.post("/courses/{id}/same/part", PRESCRIBER, Screen.SAME_MAN).signing(),
          Route.get("/courses/{id}/transfer", CLINICAL, Screen.TRANSFER),
          Route.post("/courses/{id}/transfer", REPORTS, Screen.TRANSFER).always(),
          Route.post("/courses/{id}/transfer/open", PRESCRIBER, Screen.TRANSFER).signing(),
          Route.get("/courses/{id}/sheet", CLINICAL, Screen.SHEET),
          Route.post("/courses/{id}/sheet", REPORTS, Screen.SHEET),
          Route.get("/courses/{id}/sheet/{entry}", CLINICAL, Screen.SHEET),
          Route.get("/courses/{id}/order", CLINICAL, Screen.SIGNED_DOSE),
          Route.get("/courses/{id}/forecast", CLINICAL, Screen.FORECAST),
          Route.get("/courses/{id}/injections", CLINICAL, Screen.INJECTIONS),
          Route.get("/courses/{id}/plan", CLINICAL, Screen.PLAN),
          Route.get("/courses/{id}/record", CLINICAL, Screen.WHOLE_RECORD),
          Route.get("/courses/{id}/report", REPORTS, Screen.REPORT),
          Route.post("/courses/{id}/report", REPORTS, Screen.REPORT).always(),
          Route.get("/courses/{id}/report/{entry}", REPORTS, Screen.REPORT),
          Route.post("/courses/{id}/report/{entry}", REPORTS, Screen.REPORT).always(),
          Route.post("/courses/{id}/report/{entry}/withdraw", REPORTS, Screen.REPORT),
          Route.post("/courses/{id}/tablet", REPORTS, Screen.REPORT).always(),
          Route.post("/courses/{id}/daily-tablet", PRESCRIBER, Screen.COURSE).signing(),
          Route.get("/courses/{id}/visit", CLINICAL, Screen.VISIT),
          Route.post("/courses/{id}/visit", REPORTS, Screen.VISIT).always(),
          Route.post("/courses/{id}/visit/{observation}/note", REPORTS, Screen.VISIT).always(),
          Route.post("/courses/{id}/visit/{observation}/end", REPORTS, Screen.VISIT).always(),
          Route.get("/courses/{id}/hand-over", REPORTS, Screen.VISIT),
          Route.post("/courses/{id}/hand-over", REPORTS, Screen.VISIT).always(),
          Route.post("/courses/{id}/sign", PRESCRIBER, Screen.COURSE).signing(),
          Route.post("/courses/{id}/review", PRESCRIBER, Screen.COURSE).signing(),
          Route.post("/courses/{id}/seen", PRESCRIBER, Screen.COURSE),
          Route.post("/courses/{id}/confirm", PRESCRIBER, Screen.COURSE).signing(),
          Route.post("/courses/{id}/past", PRESCRIBER, Screen.COURSE).signing(),
          Route.post("/courses/{id}/reopen", PRESCRIBER, Screen.PLAN).signing(),
          Route.post("/courses/{id}/plan", PRESCRIBER, Screen.PLAN).signing(),
          Route.get("/courses/{id}/views", WATCHER, Screen.VIEWS),
          Route.list("/views", WATCHER, Screen.RECORD_NUMBERS),
          Route.list("/room", CLINICAL, Screen.ROOM),
          Route.listForm("/room/close", REPORTS, Screen.ROOM),
          Route.get("/courses/{id}/screening", CLINICAL, Screen.SCREENING),
          Route.post("/courses/{id}/screening", REPORTS, Screen.SCREENING).always(),
          Route.post("/courses/{id}/screening/decision", PRESCRIBER, Screen.SCREENING).signing(),
          Route.post("/courses/{id}/screening/wrong", PRESCRIBER, Screen.SCREENING).signing(),
          Route.post("/courses/{id}/screening/baseline", REPORTS, Screen.SCREENING),
          Route.post("/courses/{id}/screening/examination", REPORTS, Screen.SCREENING).always(),
          Route.get("/courses/{id}/before-home", CLINICAL, Screen.BEFORE_HOME),
          Route.post("/courses/{id}/before-home", REPORTS, Screen.BEFORE_HOME),
          Route.get("/courses/{id}/vial", CLINICAL, Screen.VIAL),
          Route.post("/courses/{id}/vial", REPORTS, Screen.VIAL),
          Route.post("/courses/{id}/vial/{entry}", REPORTS, Screen.VIAL),
          Route.post("/courses/{id}/vial/{entry}/befell", REPORTS, Screen.VIAL).always(),
          Route.post("/courses/{id}/vial/{entry}/judge", PRESCRIBER, Screen.VIAL).signing(),
          Route.get("/clinic-vials", CLINICAL),
          Route.post("/clinic-vials", REPORTS),
          Route.get("/clinic-vials/{id}", CLINICAL),
          Route.post("/clinic-vials/{id}", REPORTS),
          Route.post("/clinic-vials/{id}/finish", REPORTS).always(),
          Route.get("/preparations", CLINICAL),
          Route.get("/preparations/new", KEEPER),
          Route.post("/preparations/new", KEEPER),
          Route.get("/preparations/samples", CLINICAL),
          Route.get("/preparations/samples/{id}", KEEPER),
          Route.post("/preparations/samples/{id}", KEEPER),
          Route.get("/preparations/{id}", CLINICAL),
          Route.get("/preparations/{id}/change", KEEPER),
          Route.post("/preparations/{id}/change", KEEPER),
          Route.list("/preparations/{id}/withdraw", KEEPER, Screen.PREPARATION_COURSES),
          Route.listForm("/preparations/{id}/withdraw", KEEPER, Screen.PREPARATION_COURSES)
              .always(),
          Route.get("/syringes", CLINICAL),
          Route.post("/syringes/{token}", KEEPER).always(),
          Route.get("/dose", CLINICAL),
          Route.get("/protocols", CLINICAL),
          Route.list("/protocols/courses", CLINICAL, Screen.PROTOCOL_COURSES),
          Route.get("/protocols/write", KEEPER),
          Route.listForm("/protocols/write", KEEPER, Screen.PROTOCOL_COURSES).always(),
          Route.listForm("/protocols/write/sign", KEEPER, Screen.PROTOCOL_COURSES).signing(),
          Route.post("/protocols/{name}/{version}/sign", KEEPER).signing(),
          Route.get("/populations", CLINICAL),
          Route.get("/populations/shipped/{name}", CLINICAL),
          Route.post("/populations/shipped/{name}/sign", LEAD).signing(),
          Route.get("/populations/new", LEAD),
          Route.post("/populations/new", LEAD).always(),
          Route.post("/populations/new/sign", LEAD).signing(),
          Route.post("/populations/{name}/{version}/withdraw", LEAD).signing(),
          Route.get("/populations/fit", LEAD),
          Route.post("/populations/fit", LEAD).always(),
          Route.post("/populations/fit/run", LEAD).always(),
          Route.list("/populations/fit/result", LEAD, Screen.FIT),
          Route.post("/populations/fit/stop", LEAD).always(),
          Route.listForm("/populations/fit/sign", LEAD, Screen.FIT).signing(),
          Route.get("/people", ADMINISTRATOR),
          Route.get("/people/invite", ADMINISTRATOR),
          Route.post("/people/invite", ADMINISTRATOR).proven().always(),
          Route.get("/people/{id}", ADMINISTRATOR),
          Route.post("/people/{id}/roles", ADMINISTRATOR).proven().always(),
          Route.post("/people/{id}/new-code", ADMINISTRATOR).proven().always(),
          Route.post("/people/{id}/deactivate", ADMINISTRATOR).proven().always(),
          Route.get("/people/{id}/second-factor", ADMINISTRATOR),
          Route.post("/people/{id}/second-factor", ADMINISTRATOR).proven().always(),
          Route.post("/people/{id}/end-sessions", ADMINISTRATOR).proven().always(),
          Route.get("/sessions", ADMINISTRATOR),
          Route.post("/sessions/{handle}/end", ADMINISTRATOR).proven().always(),
          Route.list("/access-taken", WATCHER, Screen.ACCESS_TAKEN),
          Route.list("/audit", WATCHER, Screen.AUDIT_TRAIL),
          Route.list("/audit.csv", WATCHER, Screen.AUDIT_TRAIL),
          Route.list("/record-faults", ANSWERS, Screen.RECORD_NUMBERS),
          Route.listForm("/record-faults/{id}", ANSWERS, Screen.RECORD_NUMBERS).signing(),
          Route.get("/clock", SIGNED_IN),
          Route.post("/clock", SIGNED_IN).always(),
          Route.post("/clock/browser", SIGNED_IN).always(),
          Route.get("/account", SIGNED_IN),
          Route.get("/account/password", SIGNED_IN),
          Route.post("/account/password", SIGNED_IN).proven().always(),
          Route.get("/account/authenticator", SIGNED_IN).proven(),
          Route.post("/account/authenticator", SIGNED_IN).proven().always(),
          Route.post("/account/recovery-codes", SIGNED_IN).proven().always(),
          Route.post("/account/passkeys/questions", SIGNED_IN).always(),
          Route.post("/account/passkeys", SIGNED_IN).proven().always(),
          Route.post("/account/passkeys/remove", SIGNED_IN).proven().always(),
          Route.post("/account/sessions/{handle}/end", SIGNED_IN).always(),
          Route.post("/proof", SIGNED_IN).always(),
          Route.post("/proof/questions", SIGNED_IN).always());

  private Routes() {}

  /** The route whose handler a request has found. */
  public static Optional<Route> of(HttpServletRequest request) {
    Object pattern = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
    return TABLE.stream()
        .filter(route -> route.path().equals(pattern))
        .filter(route -> route.method().equals(asRoute(request.getMethod())))
        .findFirst();
  }

  /** Whether a request only reads. */
  public static boolean isRead(HttpServletRequest request) {
    return asRoute(request.getMethod()).equals(HttpMethod.GET);
  }

  /** Whether a path is one of our own pages, so that a form may lead there. */
  public static boolean isOwnPage(String next) {
    String path = next.split("\\?", 2)[0];
    boolean isOurs = path.startsWith("/") && !path.startsWith("//") && !path.contains("\\");
    return isOurs && methodsOf(path).contains(HttpMethod.GET);
  }

  /** The methods that a path has routes for; empty if it leads nowhere. */
  static List<HttpMethod> methodsOf(String path) {
    return TABLE.stream()
        .filter(route -> matches(route, path))
        .map(Route::method)
        .distinct()
        .toList();
  }

  /** The route that a request is judged by: the first that matches. */
  static Optional<Route> find(HttpMethod method, String path) {
    return TABLE.stream()
        .filter(route -> route.method().equals(method) && matches(route, path))
        .findFirst();
  }

  /** What stands in a path at a variable of the route's pattern. */
  static Optional<String> variable(Route route, String path, String name) {
    return Optional.ofNullable(patternOf(route).matchAndExtract(PathContainer.parsePath(path)))
        .map(match -> match.getUriVariables().get(name));
  }

  /** The method of the route that answers: a browser may ask for the headers alone. */
  static HttpMethod asRoute(String method) {
    return HttpMethod.HEAD.matches(method) ? HttpMethod.GET : HttpMethod.valueOf(method);
  }

  private static boolean matches(Route route, String path) {
    return patternOf(route).matches(PathContainer.parsePath(path));
  }

  private static PathPattern patternOf(Route route) {
    return PathPatternParser.defaultInstance.parse(route.path());
  }
}
