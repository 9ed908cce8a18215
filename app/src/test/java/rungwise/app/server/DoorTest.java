package rungwise.app.server;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.catalina.connector.Connector;
import org.apache.coyote.AbstractProtocol;
import org.apache.tomcat.util.threads.VirtualThreadExecutor;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.springframework.boot.tomcat.TomcatWebServer;
import org.springframework.http.HttpMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import rungwise.clinic.people.Account;
import rungwise.web.access.Access;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;

class DoorTest {

  private static final String NOT_OPEN = "This page is not open to you";
  private static final String NO_SUCH_ID = "00000000-0000-4000-8000-000000000001";
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self';"
          + " img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  private static final Clinic CLINIC = Clinic.withEverybody();

  @AfterAll
  static void close() {
    CLINIC.close();
  }

  private static String pathOf(Route route) {
    return route.path().replace("{name}", "rungwise.css").replaceAll("\\{[^}]+\\}", NO_SUCH_ID);
  }

  private static List<Route> guarded() {
    return Routes.TABLE.stream()
        .filter(route -> !(route.access() instanceof Access.Anyone))
        .toList();
  }

  @Test
  void every_handler_has_a_row_in_the_table_and_every_row_a_handler() {
    Set<String> handled =
        CLINIC
            .server()
            .context()
            .getBean(RequestMappingHandlerMapping.class)
            .getHandlerMethods()
            .keySet()
            .stream()
            .filter(mapping -> !mapping.getMethodsCondition().getMethods().isEmpty())
            .flatMap(
                mapping ->
                    mapping.getPatternValues().stream()
                        .flatMap(
                            path ->
                                mapping.getMethodsCondition().getMethods().stream()
                                    .map(method -> method + " " + path)))
            .collect(Collectors.toSet());

    Set<String> rows =
        Routes.TABLE.stream()
            .map(route -> route.method() + " " + route.path())
            .collect(Collectors.toSet());

    assertThat(rows).isEqualTo(handled).hasSameSizeAs(Routes.TABLE);
  }

  @Test
  void nobody_passes_a_guarded_route_without_signing_in() {
    for (Route route : guarded()) {
      Visitor stranger = CLINIC.visitor();

      HttpResponse<String> answer =
          route.method().equals(HttpMethod.GET)
              ? stranger.get(pathOf(route))
              : stranger.post("/sign-in", pathOf(route), Map.of());

      assertThat(answer.statusCode()).as(route.toString()).isIn(302, 403);
      assertThat(answer.body()).doesNotContain("Ines Halloran");
    }
  }

  @Test
  void each_account_passes_exactly_the_routes_of_its_roles() {
    for (var member : DemoClinic.MEMBERS) {
      Visitor visitor = CLINIC.signedIn(member);
      Account account =
          CLINIC.opened().people().list().stream()
              .filter(found -> found.signInName().text().equals(member.signInName()))
              .findFirst()
              .orElseThrow();
      for (Route route : guarded()) {
        HttpResponse<String> answer =
            route.method().equals(HttpMethod.GET)
                ? visitor.get(pathOf(route))
                : visitor.post("/", pathOf(route), Map.of());

        assertThat(!answer.body().contains(NOT_OPEN))
            .as("%s at %s: %s", member.signInName(), route, answer.statusCode())
            .isEqualTo(route.access().admits(account));
      }
    }
  }

  @Test
  void every_form_without_its_proof_is_refused() {
    for (Route route : Routes.TABLE) {
      if (route.method().equals(HttpMethod.POST)) {
        Visitor visitor = CLINIC.signedIn(Clinic.ADMINISTRATOR);

        HttpResponse<String> missing = visitor.postRaw(pathOf(route), Map.of());
        HttpResponse<String> wrong = visitor.postRaw(pathOf(route), Map.of("_csrf", "guess"));

        assertThat(missing.statusCode()).as(route.toString()).isEqualTo(403);
        assertThat(wrong.statusCode()).as(route.toString()).isEqualTo(403);
        assertThat(missing.body()).contains("Nothing was saved");
        assertThat(visitor.get("/").statusCode()).isEqualTo(200);
      }
    }
  }

  @Test
  void every_response_carries_the_protecting_headers() {
    Visitor visitor = CLINIC.signedIn(Clinic.ADMINISTRATOR);
    Visitor stranger = CLINIC.visitor();
    List<HttpResponse<String>> answers =
        List.of(
            visitor.get("/"),
            visitor.get("/people"),
            visitor.get("/nowhere"),
            visitor.get("/people/" + NO_SUCH_ID),
            visitor.get("/assets/nothing"),
            visitor.ask("TRACE", "/"),
            visitor.ask("PUT", "/people"),
            visitor.get("/sign-out"),
            visitor.get("/people/invite;x=1"),
            visitor.postRaw("/sign-in", Map.of()),
            stranger.get("/"),
            stranger.get("/sign-in"),
            stranger.get("/fault"));

    assertThat(answers.stream().map(HttpResponse::statusCode))
        .containsExactly(200, 200, 404, 404, 404, 405, 405, 405, 400, 403, 302, 200, 302);
    for (HttpResponse<String> answer : answers) {
      assertThat(answer.headers().map())
          .as("%s %s", answer.statusCode(), answer.uri().getPath())
          .containsEntry("content-security-policy", List.of(POLICY))
          .containsEntry("cache-control", List.of("no-store"))
          .containsEntry("x-content-type-options", List.of("nosniff"))
          .containsEntry("referrer-policy", List.of("no-referrer"))
          .doesNotContainKey("server");
    }
  }

  @Test
  void the_style_sheet_and_the_fonts_are_protected_too_but_may_be_kept() {
    HttpResponse<String> sheet = CLINIC.visitor().get("/assets/rungwise.css");

    assertThat(sheet.headers().map())
        .containsEntry("content-security-policy", List.of(POLICY))
        .containsEntry("cache-control", List.of("max-age=2592000, public"))
        .containsEntry("content-type", List.of("text/css;charset=UTF-8"));
  }

  @Test
  void an_address_that_takes_another_method_says_which() {
    HttpResponse<String> answer =
        CLINIC.signedIn(Clinic.ADMINISTRATOR).ask("DELETE", "/people/invite");

    assertThat(answer.statusCode()).isEqualTo(405);
    assertThat(answer.headers().firstValue("Allow")).hasValue("GET, POST");
  }

  @Test
  void requests_run_on_virtual_threads() {
    var web = (TomcatWebServer) requireNonNull(CLINIC.server().context().getWebServer());
    Connector connector = web.getTomcat().getConnector();

    assertThat(((AbstractProtocol<?>) connector.getProtocolHandler()).getExecutor())
        .isInstanceOf(VirtualThreadExecutor.class);
  }
}
