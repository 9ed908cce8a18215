package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.People;

class SessionEndTest {

  private static final Duration IDLE = Duration.ofMinutes(15);
  private static final Duration WHOLE = Duration.ofHours(12);
  private static final Duration BLINK = Duration.ofMillis(1);

  private final Clinic clinic = Clinic.withEverybody();
  private final Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);

  @AfterEach
  void close() {
    clinic.close();
  }

  @Test
  void one_stays_signed_in_for_just_under_fifteen_idle_minutes() {
    clinic.clock().moveOn(IDLE.minus(BLINK));

    assertThat(administrator.get("/").statusCode()).isEqualTo(200);
  }

  @Test
  void fifteen_idle_minutes_end_the_session_and_the_way_back_is_kept() {
    clinic.clock().moveOn(IDLE);

    HttpResponse<String> answer = administrator.get("/people");

    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(Visitor.location(answer)).isEqualTo("/sign-in?next=%2Fpeople&ended");
    assertThat(administrator.get(Visitor.location(answer)).body()).contains("You were signed out");
  }

  @Test
  void twelve_hours_end_the_session_however_busy_it_was() {
    Duration step = Duration.ofMinutes(10);
    Duration passed = Duration.ZERO;
    while (passed.plus(step).compareTo(WHOLE) < 0) {
      clinic.clock().moveOn(step);
      passed = passed.plus(step);
      assertThat(administrator.get("/").statusCode()).as("after %s", passed).isEqualTo(200);
    }

    clinic.clock().moveOn(step);

    assertThat(administrator.get("/").statusCode()).isEqualTo(302);
  }

  @Test
  void a_form_sent_too_late_changes_nothing_and_says_so() {
    String token = Visitor.token(administrator.get("/people/invite").body());
    clinic.clock().moveOn(IDLE);

    HttpResponse<String> answer =
        administrator.postRaw(
            "/people/invite",
            Map.of(
                "fullName", "Oren Vale", "signInName", "oren", "roles", "auditor", "_csrf", token));

    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.body()).contains("Nothing was saved");
    assertThat(clinic.opened().people().list()).hasSize(DemoClinic.MEMBERS.size());
  }

  @Test
  void an_account_that_is_ended_is_out_at_its_next_request() {
    var nurse = DemoClinic.MEMBERS.get(2);
    Visitor visitor = clinic.signedIn(nurse);
    People people = clinic.opened().people();
    Account account =
        people.list().stream()
            .filter(found -> found.signInName().text().equals(nurse.signInName()))
            .findFirst()
            .orElseThrow();

    administrator.post(
        "/people/" + account.id(), "/people/" + account.id() + "/deactivate", Map.of());

    assertThat(visitor.get("/").statusCode()).isEqualTo(302);
    assertThat(people.find(account.id()).orElseThrow().isActive()).isFalse();
  }

  @Test
  void a_role_that_is_taken_away_closes_its_pages_at_once() {
    var nurse = DemoClinic.MEMBERS.get(2);
    Visitor visitor = clinic.signedIn(nurse);
    Account account =
        clinic.opened().people().list().stream()
            .filter(found -> found.signInName().text().equals(nurse.signInName()))
            .findFirst()
            .orElseThrow();
    String page = "/people/" + account.id();
    administrator.post(page, page + "/roles", Map.of("roles", "administrator"));
    assertThat(visitor.get("/people").statusCode()).isEqualTo(200);

    administrator.post(page, page + "/roles", Map.of("roles", "auditor"));

    assertThat(visitor.get("/people").statusCode()).isEqualTo(403);
  }
}
