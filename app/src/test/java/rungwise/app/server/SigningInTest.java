package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic.Member;

class SigningInTest {

  private static final Member ADMINISTRATOR = Clinic.ADMINISTRATOR;
  private static final String NAME = ADMINISTRATOR.signInName();
  private static final int TRIES_FROM_ONE_DESK = 6;

  private final Clinic clinic = Clinic.withAdministrator();

  @AfterEach
  void close() {
    clinic.close();
  }

  @Test
  void the_right_password_leads_to_today_under_a_new_session_id() {
    Visitor visitor = clinic.visitor();
    visitor.get("/sign-in");
    String before = visitor.sessionId();

    HttpResponse<String> answer = visitor.signIn(NAME, ADMINISTRATOR.password());

    assertThat(answer.statusCode()).isEqualTo(303);
    assertThat(Visitor.location(answer)).isEqualTo("/");
    assertThat(visitor.sessionId()).isNotEqualTo(before);
    assertThat(visitor.get("/").body()).contains(ADMINISTRATOR.fullName());
  }

  @Test
  void the_session_cookie_is_out_of_reach_for_scripts_and_for_other_sites() {
    HttpResponse<String> page = clinic.visitor().get("/sign-in");

    assertThat(page.headers().firstValue("Set-Cookie").orElseThrow())
        .contains("HttpOnly")
        .contains("SameSite=Lax")
        .doesNotContain("Secure");
  }

  @Test
  void a_name_typed_with_capitals_or_spaces_is_the_same_name() {
    HttpResponse<String> answer = clinic.visitor().signIn(" Ines ", ADMINISTRATOR.password());

    assertThat(answer.statusCode()).isEqualTo(303);
  }

  @Test
  void a_wrong_password_and_an_unknown_name_get_the_same_answer() {
    HttpResponse<String> wrong = clinic.visitor().signIn(NAME, "not this one at all");
    HttpResponse<String> unknown = clinic.visitor().signIn("nobody", "not this one at all");

    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(unknown.statusCode()).isEqualTo(422);
    assertThat(withoutName(unknown, "nobody")).isEqualTo(withoutName(wrong, NAME));
  }

  private static String withoutName(HttpResponse<String> answer, String name) {
    String body = answer.body();
    return body.replace(Visitor.token(body), "").replace("value=\"" + name + "\"", "");
  }

  @Test
  void an_unknown_name_costs_the_same_slow_hash_as_a_wrong_password() {
    Duration known = fastestOfThree(NAME);

    Duration unknown = fastestOfThree("nobody");

    // One hash of 19 MiB is nearly all of the time: without it a tenth would be left.
    assertThat(unknown).isGreaterThan(known.dividedBy(3)).isLessThan(known.multipliedBy(3));
  }

  private Duration fastestOfThree(String name) {
    return IntStream.range(0, 3)
        .mapToObj(
            i -> {
              Visitor visitor = clinic.visitor();
              String token = Visitor.token(visitor.get("/sign-in").body());
              long start = System.nanoTime();
              visitor.postRaw(
                  "/sign-in", Map.of("signInName", name, "password", "wrong", "_csrf", token));
              return Duration.ofNanos(System.nanoTime() - start);
            })
        .min(Duration::compareTo)
        .orElseThrow();
  }

  @Test
  void the_seventh_wrong_try_has_to_wait_and_then_may_go_on() {
    Visitor visitor = clinic.visitor();
    for (int tries = 0; tries < TRIES_FROM_ONE_DESK; tries++) {
      assertThat(visitor.signIn(NAME, "wrong").statusCode()).isEqualTo(422);
    }

    HttpResponse<String> seventh = visitor.signIn(NAME, ADMINISTRATOR.password());

    assertThat(seventh.statusCode()).isEqualTo(429);
    assertThat(seventh.headers().firstValueAsLong("Retry-After")).hasValue(21);
    assertThat(seventh.body()).contains("Wait 21 seconds");
    clinic.clock().moveOn(Duration.ofSeconds(21));
    assertThat(visitor.signIn(NAME, ADMINISTRATOR.password()).statusCode()).isEqualTo(303);
  }

  @Test
  void strangers_never_lock_anybody_out_of_a_browser_that_has_signed_in_before() {
    Visitor owner = clinic.signedIn(ADMINISTRATOR);
    owner.post("/", "/sign-out", Map.of());
    for (int tries = 0; tries < TRIES_FROM_ONE_DESK * 2; tries++) {
      clinic.visitor().signIn(NAME, "wrong");
    }

    assertThat(clinic.visitor().signIn(NAME, ADMINISTRATOR.password()).statusCode()).isEqualTo(429);
    assertThat(owner.signIn(NAME, ADMINISTRATOR.password()).statusCode()).isEqualTo(303);
  }

  @Test
  void trying_too_often_gets_the_same_answer_for_a_name_that_nobody_has() {
    for (int tries = 0; tries < TRIES_FROM_ONE_DESK; tries++) {
      clinic.visitor().signIn(NAME, "wrong");
      clinic.visitor().signIn("nobody", "wrong");
    }

    HttpResponse<String> known = clinic.visitor().signIn(NAME, "wrong");
    HttpResponse<String> unknown = clinic.visitor().signIn("nobody", "wrong");

    assertThat(known.statusCode()).isEqualTo(429);
    assertThat(unknown.statusCode()).isEqualTo(429);
    assertThat(withoutName(unknown, "nobody")).isEqualTo(withoutName(known, NAME));
  }

  @Test
  void signing_in_leads_back_to_the_page_that_was_wanted() {
    Visitor visitor = clinic.visitor();

    String signIn = Visitor.location(visitor.get("/people"));
    HttpResponse<String> answer =
        visitor.post(
            signIn,
            "/sign-in",
            Map.of("signInName", NAME, "password", ADMINISTRATOR.password(), "next", "/people"));

    assertThat(signIn).isEqualTo("/sign-in?next=%2Fpeople");
    assertThat(visitor.get(signIn).statusCode()).isEqualTo(303);
    assertThat(Visitor.location(answer)).isEqualTo("/people");
  }

  @Test
  void signing_in_never_leads_to_another_server() {
    for (String next :
        new String[] {"//elsewhere.example/", "https://elsewhere.example/", "/\\elsewhere", "x"}) {
      HttpResponse<String> answer =
          clinic
              .visitor()
              .fill(
                  "/sign-in",
                  Map.of("signInName", NAME, "password", ADMINISTRATOR.password(), "next", next));

      assertThat(Visitor.location(answer)).isEqualTo("/");
    }
  }

  @Test
  void after_signing_out_the_old_session_opens_nothing() {
    Visitor visitor = clinic.signedIn(ADMINISTRATOR);

    HttpResponse<String> out = visitor.post("/", "/sign-out", Map.of());

    assertThat(Visitor.location(out)).isEqualTo("/sign-in");
    assertThat(visitor.get("/").statusCode()).isEqualTo(302);
  }
}
