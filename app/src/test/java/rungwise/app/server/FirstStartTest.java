package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.Role;

class FirstStartTest {

  private static final String PASSWORD = "four quiet words here";

  private final Clinic clinic = Clinic.empty();
  private final String code = clinic.opened().people().firstStart().orElseThrow().text();

  @AfterEach
  void close() {
    clinic.close();
  }

  private Map<String, String> form(String typedCode, String name, String password) {
    return Map.of(
        "code", typedCode, "signInName", name, "fullName", "Ana Ruiz", "password", password);
  }

  @Test
  void an_empty_clinic_leads_everybody_to_the_first_start() {
    Visitor visitor = clinic.visitor();

    assertThat(Visitor.location(visitor.get("/"))).startsWith("/sign-in");
    assertThat(Visitor.location(visitor.get("/sign-in"))).isEqualTo("/first-start");
    assertThat(Visitor.location(visitor.get("/welcome"))).isEqualTo("/first-start");
  }

  @Test
  void the_code_from_the_terminal_makes_an_administrator_who_can_sign_in() {
    Visitor visitor = clinic.visitor();

    HttpResponse<String> answer = visitor.fill("/first-start", form(code, "ana.ruiz", PASSWORD));

    assertThat(Visitor.location(answer)).isEqualTo("/sign-in?opened");
    assertThat(clinic.opened().people().list().getFirst().roles())
        .containsExactly(Role.ADMINISTRATOR);
    assertThat(visitor.signIn("ana.ruiz", PASSWORD).statusCode()).isEqualTo(303);
  }

  @Test
  void the_first_start_is_over_once_there_is_an_account() {
    Visitor late = clinic.visitor();
    String token = Visitor.token(late.get("/first-start").body());
    clinic.visitor().fill("/first-start", form(code, "ana.ruiz", PASSWORD));

    HttpResponse<String> page = late.get("/first-start");
    HttpResponse<String> answer =
        late.postRaw(
            "/first-start",
            Map.of(
                "code",
                code,
                "signInName",
                "second",
                "fullName",
                "Second",
                "password",
                PASSWORD,
                "_csrf",
                token));

    assertThat(Visitor.location(page)).isEqualTo("/sign-in");
    assertThat(Visitor.location(answer)).isEqualTo("/sign-in");
    assertThat(clinic.opened().people().list()).hasSize(1);
  }

  @Test
  void every_fault_of_the_form_is_said_at_once_and_leads_to_its_field() {
    HttpResponse<String> answer =
        clinic
            .visitor()
            .fill(
                "/first-start",
                Map.of(
                    "code", "WRNG-WRNG-WRNG-WRNG",
                    "signInName", "ana ruiz",
                    "fullName", "",
                    "password", "short"));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("<a href=\"#code\">", "<a href=\"#fullName\">", "<a href=\"#signInName\">")
        .contains("<a href=\"#password\">")
        .contains("value=\"ana ruiz\"")
        .doesNotContainPattern("<li>[^<\\s]")
        .doesNotContain("short\"");
    assertThat(clinic.opened().people().list()).isEmpty();
  }

  @Test
  void codes_cannot_be_tried_without_end() {
    Visitor visitor = clinic.visitor();
    for (int tries = 0; tries < 6; tries++) {
      visitor.fill("/first-start", form("WRNG-WRNG-WRNG-WRNG", "ana.ruiz", PASSWORD));
    }

    HttpResponse<String> answer = visitor.fill("/first-start", form(code, "ana.ruiz", PASSWORD));

    assertThat(answer.statusCode()).isEqualTo(429);
  }

  @Test
  void an_invited_person_sets_a_password_with_the_code_once() {
    clinic.visitor().fill("/first-start", form(code, "ana.ruiz", PASSWORD));
    Visitor ana = clinic.visitor();
    ana.signIn("ana.ruiz", PASSWORD);
    HttpResponse<String> invited =
        ana.fill(
            "/people/invite",
            Map.of("fullName", "Oren Vale", "signInName", "oren", "roles", "auditor"));
    String page = ana.get(Visitor.location(invited)).body();
    String shown = page.replaceAll("(?s).*class=\"code\">([^<]+)<.*", "$1");
    Map<String, String> welcome =
        Map.of("code", shown, "signInName", "oren", "password", "other quiet words here");

    HttpResponse<String> first = clinic.visitor().fill("/welcome", welcome);
    HttpResponse<String> second = clinic.visitor().fill("/welcome", welcome);

    assertThat(Visitor.location(first)).isEqualTo("/sign-in?opened");
    assertThat(second.statusCode()).isEqualTo(422);
    assertThat(clinic.visitor().signIn("oren", "other quiet words here").statusCode())
        .isEqualTo(303);
  }
}
