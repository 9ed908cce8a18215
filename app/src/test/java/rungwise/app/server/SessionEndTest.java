package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic.Member;
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

  private Account accountOf(Member member) {
    return clinic.opened().people().list().stream()
        .filter(found -> found.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_code_of_an_administrator_ends_every_session_and_the_old_password_at_once() {
    var nurse = DemoClinic.MEMBERS.get(2);
    Visitor desk = clinic.signedIn(nurse);
    Visitor home = clinic.signedIn(nurse);
    String page = "/people/" + accountOf(nurse).id();

    administrator.post(page, page + "/new-code", Map.of());

    assertThat(desk.get("/").statusCode()).isEqualTo(302);
    assertThat(home.get("/").statusCode()).isEqualTo(302);
    assertThat(clinic.visitor().signIn(nurse.signInName(), nurse.password()).statusCode())
        .isEqualTo(422);
    assertThat(administrator.get("/").statusCode()).isEqualTo(200);
  }

  @Test
  void a_new_password_ends_every_session_but_the_one_that_has_set_it() {
    var nurse = DemoClinic.MEMBERS.get(2);
    Visitor desk = clinic.signedIn(nurse);
    Visitor home = clinic.signedIn(nurse);
    String before = desk.sessionId();

    HttpResponse<String> changed =
        desk.fill(
            "/account/password",
            Map.of("presentPassword", nurse.password(), "newPassword", "wide-kettle-moss-orchard"));

    assertThat(changed.statusCode()).isEqualTo(303);
    assertThat(home.get("/").statusCode()).isEqualTo(302);
    assertThat(desk.get("/").statusCode()).isEqualTo(200);
    assertThat(desk.sessionId()).isNotEqualTo(before);
  }

  @Test
  void nobody_gives_a_code_to_himself_by_a_page() {
    String page = "/people/" + accountOf(Clinic.ADMINISTRATOR).id();

    HttpResponse<String> answer = administrator.post(page, page + "/new-code", Map.of());

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("That is your own account");
    assertThat(administrator.get("/").statusCode()).isEqualTo(200);
  }

  @Test
  void the_clinics_name_and_ones_own_are_no_passwords() {
    var nurse = DemoClinic.MEMBERS.get(2);
    Visitor desk = clinic.signedIn(nurse);

    for (String wanted : List.of("northgateclinic1", "maren okafor", "qwertyuiopasdf")) {
      HttpResponse<String> answer =
          desk.fill(
              "/account/password",
              Map.of("presentPassword", nurse.password(), "newPassword", wanted));

      assertThat(answer.statusCode()).as(wanted).isEqualTo(422);
      assertThat(answer.body()).as(wanted).contains("The password would be guessed");
    }
  }
}
