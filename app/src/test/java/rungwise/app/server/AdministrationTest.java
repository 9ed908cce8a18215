package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.people.Account;

@TestInstance(Lifecycle.PER_CLASS)
class AdministrationTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member EDUCATOR = DemoClinic.MEMBERS.get(2);
  private static final Member AUDITOR = DemoClinic.MEMBERS.get(4);
  private static final Pattern END = Pattern.compile("action=\"(/[a-z/]*sessions/[^\"]+/end)\"");

  private final Clinic clinic = Clinic.withDemoStory();

  @AfterAll
  void close() {
    clinic.close();
  }

  private Account account(Member member) {
    return clinic.opened().people().list().stream()
        .filter(found -> found.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> ends(String page) {
    return END.matcher(page).results().map(found -> found.group(1)).toList();
  }

  private String lastKind() {
    return clinic.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 1).getFirst().kind();
  }

  @Test
  void an_administrator_ends_one_session_and_leaves_the_others() {
    clinic.clock().moveOn(Duration.ofHours(1));
    Visitor first = clinic.signedIn(EDUCATOR);
    clinic.clock().moveOn(Duration.ofMinutes(1));
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);

    String page = administrator.get("/sessions").body();
    assertThat(page).contains(EDUCATOR.fullName(), "Java-http-client", "127.0.0.1");
    HttpResponse<String> ended = administrator.post("/sessions", ends(page).getLast(), Map.of());

    assertThat(Visitor.location(ended)).isEqualTo("/sessions");
    assertThat(lastKind()).isEqualTo("sessions_ended");
    assertThat(first.get("/").statusCode()).isEqualTo(302);
    assertThat(administrator.get("/").statusCode()).isEqualTo(200);
    assertThat(administrator.get("/sessions").body()).doesNotContain(EDUCATOR.fullName());
  }

  @Test
  void an_administrator_ends_all_sessions_of_a_person() {
    Visitor desk = clinic.signedIn(PRESCRIBER);
    Visitor ward = clinic.signedIn(PRESCRIBER);
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);
    String page = "/people/" + account(PRESCRIBER).id();

    HttpResponse<String> ended = administrator.post(page, page + "/end-sessions", Map.of());

    assertThat(Visitor.location(ended)).isEqualTo(page);
    assertThat(desk.get("/").statusCode()).isEqualTo(302);
    assertThat(ward.get("/").statusCode()).isEqualTo(302);
    assertThat(administrator.get("/").statusCode()).isEqualTo(200);
  }

  @Test
  void a_person_ends_an_own_session_elsewhere_and_nobody_else_s() {
    clinic.clock().moveOn(Duration.ofHours(1));
    Visitor here = clinic.signedIn(AUDITOR);
    Visitor there = clinic.signedIn(AUDITOR);
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);

    List<String> own = ends(here.get("/account").body());
    assertThat(own).hasSize(1);
    administrator.post("/account", own.getFirst(), Map.of());
    assertThat(there.get("/").statusCode()).as("not by another person").isEqualTo(200);
    here.post("/account", ends(here.get("/account").body()).getFirst(), Map.of());

    assertThat(there.get("/").statusCode()).isEqualTo(302);
    assertThat(here.get("/").statusCode()).isEqualTo(200);
  }

  @Test
  void a_session_that_grew_old_is_not_listed() {
    clinic.clock().moveOn(Duration.ofHours(1));
    clinic.signedIn(EDUCATOR);
    clinic.clock().moveOn(Duration.ofMinutes(15));

    assertThat(clinic.signedIn(Clinic.ADMINISTRATOR).get("/sessions").body())
        .doesNotContain(EDUCATOR.fullName());
  }

  @Test
  void the_audit_trail_is_searched_by_person_course_kind_and_day_and_read_in_parts() {
    Visitor auditor = clinic.signedIn(AUDITOR);
    String all = auditor.get("/audit").body();

    assertThat(rows(all)).hasSize(50);
    assertThat(all).contains("before=").doesNotContain("Adeyemi");
    String signed = auditor.get("/audit?kind=dose_signed").body();
    assertThat(rows(signed)).isNotEmpty().allMatch(row -> row.contains("dose signed"));
    String ofEducator = auditor.get("/audit?person=" + account(EDUCATOR).id()).body();
    assertThat(rows(ofEducator)).isNotEmpty().allMatch(row -> row.contains("Maren Okafor"));
    String ofCourse = auditor.get("/audit?record=hl-1017").body();
    assertThat(rows(ofCourse)).isNotEmpty().allMatch(row -> row.contains("HL-1017"));
    assertThat(rows(auditor.get("/audit?from=2999-01-01").body())).isEmpty();
    HttpResponse<String> wrong = auditor.get("/audit?record=nobody&from=yesterday");
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("No course has the record number", "is not a date");
  }

  private static List<String> rows(String page) {
    return Pattern.compile("(?s)<tr>\\s*<th scope=\"row\">(.*?)</tr>")
        .matcher(page)
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  @Test
  void the_same_search_is_a_file_for_a_spreadsheet() {
    Visitor auditor = clinic.signedIn(AUDITOR);

    HttpResponse<String> file = auditor.get("/audit.csv?kind=dose_signed");

    assertThat(file.headers().firstValue("Content-Type")).contains("text/csv;charset=UTF-8");
    assertThat(file.headers().firstValue("Content-Disposition").orElseThrow())
        .startsWith("attachment");
    List<String> lines = file.body().lines().toList();
    assertThat(lines.getFirst()).isEqualTo("number,at,who,what,about,records,reason");
    assertThat(lines.subList(1, lines.size()))
        .hasSameSizeAs(rows(auditor.get("/audit?kind=dose_signed").body()))
        .allMatch(line -> line.contains("\"dose signed\""));
    assertThat(lastKind()).as("reading it is a view").isEqualTo("page_viewed");
  }

  @Test
  void a_password_is_changed_with_the_present_one_and_ends_every_other_session() {
    clinic.clock().moveOn(Duration.ofHours(1));
    Visitor here = clinic.signedIn(EDUCATOR);
    Visitor there = clinic.signedIn(EDUCATOR);
    String other = "green river morning bread";

    HttpResponse<String> wrong =
        here.fill(
            "/account/password", Map.of("presentPassword", "guessed", "newPassword", "short"));
    HttpResponse<String> right =
        here.fill(
            "/account/password",
            Map.of("presentPassword", EDUCATOR.password(), "newPassword", other));

    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("The present password is not right", "has 5 characters");
    assertThat(Visitor.location(right)).isEqualTo("/account");
    assertThat(lastKind()).isEqualTo("password_set");
    assertThat(here.get("/").statusCode()).isEqualTo(200);
    assertThat(there.get("/").statusCode()).isEqualTo(302);
    assertThat(clinic.visitor().signIn(EDUCATOR.signInName(), other).statusCode()).isEqualTo(303);
    assertThat(clinic.visitor().signIn(EDUCATOR.signInName(), EDUCATOR.password()).statusCode())
        .isEqualTo(422);
    restore(other);
  }

  /** Gives the demo's password back, for the other tests of this class. */
  private void restore(String present) {
    clinic
        .opened()
        .people()
        .changePassword(account(EDUCATOR).id(), present, EDUCATOR.password())
        .orThrow();
  }
}
