package rungwise.web.access;

import java.util.List;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPatternParser;
import rungwise.clinic.people.Role;

/**
 * The one table of who may go where. What is not in it is open to nobody: a new handler needs a row
 * here before anyone can reach it.
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
  private static final Access ADMINISTRATOR = new Access.AnyOf(Set.of(Role.ADMINISTRATOR));

  /** Every route, in the order of the guide. */
  public static final List<Route> TABLE =
      List.of(
          Route.get("/assets/{name}", ANYONE),
          Route.get("/sign-in", ANYONE),
          Route.post("/sign-in", ANYONE),
          Route.post("/sign-out", ANYONE),
          Route.get("/first-start", ANYONE),
          Route.post("/first-start", ANYONE),
          Route.get("/welcome", ANYONE),
          Route.post("/welcome", ANYONE),
          Route.get("/", SIGNED_IN),
          Route.get("/courses/new", OPENS_COURSES),
          Route.post("/courses/new", OPENS_COURSES),
          Route.get("/courses/{id}", CLINICAL),
          Route.get("/courses/{id}/order", CLINICAL),
          Route.get("/courses/{id}/report", REPORTS),
          Route.post("/courses/{id}/report", REPORTS),
          Route.get("/courses/{id}/report/{entry}", REPORTS),
          Route.post("/courses/{id}/report/{entry}", REPORTS),
          Route.post("/courses/{id}/report/{entry}/withdraw", REPORTS),
          Route.get("/courses/{id}/screening", CLINICAL),
          Route.post("/courses/{id}/screening", REPORTS),
          Route.post("/courses/{id}/screening/decision", PRESCRIBER),
          Route.post("/courses/{id}/screening/baseline", REPORTS),
          Route.post("/courses/{id}/screening/examination", REPORTS),
          Route.get("/courses/{id}/before-home", CLINICAL),
          Route.post("/courses/{id}/before-home", REPORTS),
          Route.get("/courses/{id}/vial", CLINICAL),
          Route.post("/courses/{id}/vial", REPORTS),
          Route.post("/courses/{id}/vial/{entry}", REPORTS),
          Route.post("/courses/{id}/sign", PRESCRIBER),
          Route.post("/courses/{id}/review", PRESCRIBER),
          Route.post("/courses/{id}/reopen", PRESCRIBER),
          Route.post("/courses/{id}/plan", PRESCRIBER),
          Route.get("/preparations", CLINICAL),
          Route.get("/preparations/new", KEEPER),
          Route.post("/preparations/new", KEEPER),
          Route.get("/preparations/samples", CLINICAL),
          Route.get("/preparations/samples/{id}", KEEPER),
          Route.post("/preparations/samples/{id}", KEEPER),
          Route.get("/preparations/{id}", CLINICAL),
          Route.get("/preparations/{id}/change", KEEPER),
          Route.post("/preparations/{id}/change", KEEPER),
          Route.post("/preparations/{id}/withdraw", KEEPER),
          Route.get("/syringes", CLINICAL),
          Route.post("/syringes/{token}", KEEPER),
          Route.get("/dose", CLINICAL),
          Route.get("/protocols", CLINICAL),
          Route.post("/protocols/{name}/{version}/sign", KEEPER),
          Route.get("/people", ADMINISTRATOR),
          Route.get("/people/invite", ADMINISTRATOR),
          Route.post("/people/invite", ADMINISTRATOR),
          Route.get("/people/{id}", ADMINISTRATOR),
          Route.post("/people/{id}/roles", ADMINISTRATOR),
          Route.post("/people/{id}/new-code", ADMINISTRATOR),
          Route.post("/people/{id}/deactivate", ADMINISTRATOR));

  private Routes() {}

  /** The methods that a path has routes for; empty if it leads nowhere. */
  static List<HttpMethod> methodsOf(String path) {
    return TABLE.stream()
        .filter(route -> matches(route, path))
        .map(Route::method)
        .distinct()
        .toList();
  }

  private static boolean matches(Route route, String path) {
    return PathPatternParser.defaultInstance
        .parse(route.path())
        .matches(PathContainer.parsePath(path));
  }
}
