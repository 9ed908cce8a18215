package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.http.HttpMethod;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.Look;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.audit.Viewed.Outcome;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseState;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;
import rungwise.web.access.Shown;

/** Who looks at a man is on record before anything of him is sent. */
class ViewsTest {

  private static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member AUDITOR = DemoClinic.MEMBERS.getLast();
  private static final String SETTLED = "HL-1017";
  private static final String NO_SUCH_ID = "00000000-0000-4000-8000-000000000001";

  private final Clinic clinic = Clinic.withDemoStory();
  private final CourseState course = settled();

  @AfterEach
  void close() {
    clinic.close();
  }

  /** The course with reports and a signed dose of which a sheet can be made. */
  private CourseState settled() {
    return clinic.opened().courseCases(new ClinicTime(ZoneOffset.UTC)).titration().all().stream()
        .filter(state -> state.file().patient().recordNumber().equals(SETTLED))
        .findFirst()
        .orElseThrow();
  }

  private CourseId id() {
    return course.file().id();
  }

  private String man() {
    return course.file().patient().fullName();
  }

  private String path() {
    return "/courses/" + id();
  }

  private List<Look> looks() {
    return clinic.opened().viewing().of(id(), OptionalLong.empty()).orElseThrow().looks();
  }

  private Account account(Member member) {
    return clinic.opened().people().list().stream()
        .filter(found -> found.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  private void assertLooked(Member who, Screen... screens) {
    assertThat(looks()).extracting(Look::screen).containsExactly(screens);
    assertThat(looks()).extracting(Look::by).containsOnly(account(who).id());
    assertThat(looks()).extracting(Look::outcome).containsOnly(Outcome.SHOWN);
  }

  private void breakTheRecordOfViews() throws SQLException {
    try (var raw = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = raw.createStatement()) {
      statement.execute(
          "create trigger broken before insert on page_viewed"
              + " begin select raise(abort, 'broken'); end");
    }
  }

  /** An entry of the kind that a route shows. */
  private String pathOf(Route route, String sheet) {
    String report = course.file().reports().getFirst().entry().id().text();
    return route
        .path()
        .replace("{id}", id().text())
        .replace("{entry}", route.path().contains("/sheet/") ? sheet : report);
  }

  /** Makes a sheet for home and gives its entry. */
  private String sheet(Visitor visitor) {
    String page = visitor.get(path() + "/sheet").body();
    String order = page.replaceAll("(?s).*name=\"order\" value=\"([^\"]*)\".*", "$1");
    HttpResponse<String> made =
        visitor.post(
            path() + "/sheet",
            path() + "/sheet",
            Map.of(
                "order", order,
                "language", "en",
                "paper", "a4",
                "keeping", "FRIDGE",
                "clinic_number", "312 555 0100",
                "after_hours", "312 555 0101",
                "hospital", "North Hospital",
                "transport", "a taxi"));
    assertThat(made.statusCode()).as(made.body()).isEqualTo(303);
    return clinic
        .opened()
        .courseCases(new ClinicTime(ZoneOffset.UTC))
        .titration()
        .find(id())
        .orElseThrow()
        .file()
        .entries()
        .getLast()
        .id()
        .text();
  }

  @Test
  void every_route_with_a_course_in_its_path_is_recorded() {
    List<Route> routes =
        Routes.TABLE.stream()
            .filter(route -> route.path().startsWith("/courses/{"))
            .filter(route -> route.method().equals(HttpMethod.GET))
            .toList();
    assertThat(routes).hasSizeGreaterThan(4);
    Visitor clinical = clinic.signedIn(PRESCRIBER);
    Visitor auditor = clinic.signedIn(AUDITOR);
    String sheet = sheet(clinical);

    for (Route route : routes) {
      boolean isClinical = route.access().admits(account(PRESCRIBER));
      int before = looks().size();

      HttpResponse<String> answer = (isClinical ? clinical : auditor).get(pathOf(route, sheet));

      assertThat(answer.statusCode()).as(route.path()).isEqualTo(200);
      assertThat(route.shown()).isInstanceOf(Shown.CourseOfPath.class);
      assertThat(looks()).as(route.path()).hasSize(before + 1);
      assertThat(looks().getFirst().screen())
          .isEqualTo(((Shown.CourseOfPath) route.shown()).screen());
    }
  }

  @Test
  void the_title_of_every_page_about_a_man_names_him_and_the_page() {
    Visitor clinical = clinic.signedIn(PRESCRIBER);
    Visitor auditor = clinic.signedIn(AUDITOR);
    String sheet = sheet(clinical);
    List<String> titles =
        Routes.TABLE.stream()
            .filter(route -> route.path().startsWith("/courses/{"))
            .filter(route -> route.method().equals(HttpMethod.GET))
            .map(
                route ->
                    (route.access().admits(account(PRESCRIBER)) ? clinical : auditor)
                        .get(pathOf(route, sheet))
                        .body())
            .filter(body -> body.startsWith("<!doctype html>"))
            .map(body -> body.replaceAll("(?s).*<title>(.*?)</title>.*", "$1"))
            .toList();

    assertThat(titles).hasSizeGreaterThan(20).allSatisfy(one -> assertThat(one).contains(man()));
    assertThat(titles).doesNotHaveDuplicates();
  }

  @Test
  void a_view_says_who_and_when_and_asking_for_the_headers_alone_counts_too() {
    Visitor visitor = clinic.signedIn(PRESCRIBER);

    visitor.get(path());
    visitor.ask("HEAD", path() + "/order");

    assertLooked(PRESCRIBER, Screen.SIGNED_DOSE, Screen.COURSE);
    assertThat(looks()).extracting(Look::at).containsOnly(clinic.clock().instant());
  }

  @Test
  void the_days_list_is_a_view_of_every_man_it_names() {
    clinic.signedIn(PRESCRIBER).get("/");

    assertLooked(PRESCRIBER, Screen.DAY_LIST);
    for (var file : clinic.opened().viewing().courses()) {
      var others = clinic.opened().viewing().of(file.id(), OptionalLong.empty()).orElseThrow();
      assertThat(others.looks()).isEqualTo(looks());
    }
  }

  @Test
  void a_search_is_a_view_of_each_man_that_it_shows_and_of_nobody_else() {
    Visitor visitor = clinic.signedIn(PRESCRIBER);

    String shown = visitor.post("/men", "/men", Map.of("typed", man())).body();
    visitor.post("/men", "/men", Map.of("typed", "nobody of this name"));

    assertThat(shown).contains(man(), course.file().patient().recordNumber());
    assertLooked(PRESCRIBER, Screen.SEARCH);
    for (var file : clinic.opened().viewing().courses()) {
      var looked = clinic.opened().viewing().of(file.id(), OptionalLong.empty()).orElseThrow();
      assertThat(looked.looks()).hasSize(file.id().equals(id()) ? 1 : 0);
    }
  }

  @Test
  void the_courses_of_a_protocol_are_a_view_of_each_man_that_runs_on_it_and_of_nobody_else() {
    Visitor visitor = clinic.signedIn(PRESCRIBER);
    String list = visitor.get("/protocols").body();
    assertThat(looks()).isEmpty();
    Plan plan = course.file().plan();
    String courses =
        "/protocols/courses?of=" + plan.protocol() + "+version+" + plan.protocolVersion();
    assertThat(list).contains(courses);

    String page = visitor.get(courses).body();

    for (var file : clinic.opened().viewing().courses()) {
      var looked = clinic.opened().viewing().of(file.id(), OptionalLong.empty()).orElseThrow();
      boolean runsOnIt = isOnTheProtocolOf(plan, file.plan());
      assertThat(page.contains("/courses/" + file.id())).isEqualTo(runsOnIt);
      assertThat(page.contains(file.patient().fullName())).isEqualTo(runsOnIt);
      assertThat(list).doesNotContain(file.patient().fullName());
      assertThat(looked.looks()).hasSize(runsOnIt ? 1 : 0);
    }
    assertLooked(PRESCRIBER, Screen.PROTOCOL_COURSES);
    assertThat(visitor.get("/protocols/courses?of=none").statusCode()).isEqualTo(404);
  }

  private static boolean isOnTheProtocolOf(Plan plan, Plan other) {
    return other.protocol().equals(plan.protocol())
        && other.protocolVersion() == plan.protocolVersion();
  }

  @Test
  void a_days_list_that_names_nobody_is_no_view() {
    clinic.signedIn(ADMINISTRATOR).get("/");

    assertThat(looks()).isEmpty();
  }

  @Test
  void a_form_that_is_refused_shows_the_man_again_and_one_that_is_done_does_not() {
    Visitor visitor = clinic.signedIn(PRESCRIBER);

    HttpResponse<String> refused = visitor.post("/dose", path() + "/review", Map.of());
    HttpResponse<String> done =
        visitor.post("/dose", path() + "/screening", Map.of("stillTrue", "true"));

    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(done.statusCode()).isEqualTo(303);
    assertLooked(PRESCRIBER, Screen.COURSE);
  }

  @Test
  void a_refused_look_is_on_record_as_refused() {
    assertThat(clinic.signedIn(AUDITOR).get(path()).statusCode()).isEqualTo(403);
    assertThat(clinic.visitor().get(path()).statusCode()).isEqualTo(302);

    assertThat(looks())
        .singleElement()
        .extracting(Look::by, Look::screen, Look::outcome)
        .containsExactly(account(AUDITOR).id(), Screen.COURSE, Outcome.REFUSED);
  }

  @Test
  void a_page_that_is_not_there_shows_nobody() {
    Visitor visitor = clinic.signedIn(PRESCRIBER);

    assertThat(visitor.get("/courses/" + NO_SUCH_ID).statusCode()).isEqualTo(404);
    assertThat(visitor.get(path() + "/report/" + NO_SUCH_ID).statusCode()).isEqualTo(404);

    assertThat(looks()).isEmpty();
  }

  @Test
  void what_cannot_be_recorded_is_not_shown() throws SQLException {
    Visitor visitor = clinic.signedIn(PRESCRIBER);
    breakTheRecordOfViews();

    for (String page : List.of(path(), path() + "/order", path() + "/report", "/")) {
      HttpResponse<String> answer = visitor.get(page);

      assertThat(answer.statusCode()).as(page).isEqualTo(503);
      assertThat(answer.body())
          .contains("The record could not be written", "nothing was shown")
          .doesNotContain(man(), "Exception", "rungwise.store", "broken");
    }
    assertThat(visitor.get("/preparations").statusCode()).isEqualTo(200);
  }

  @Test
  void who_has_seen_a_course_is_read_by_watchers_fifty_at_a_time() {
    Visitor prescriber = clinic.signedIn(PRESCRIBER);
    for (int looked = 0; looked < 51; looked++) {
      prescriber.get(path());
    }
    Visitor auditor = clinic.signedIn(AUDITOR);

    String newest = auditor.get(path() + "/views").body();
    String older = newest.replaceFirst("(?s).*href=\"([^\"]*\\?before=\\d+)\".*", "$1");
    String oldest = auditor.get(older).body();

    assertThat(newest.split("the course page", -1)).hasSize(51);
    assertThat(newest).contains(man(), "Tobias Wren", "Older views");
    assertThat(oldest.split("the course page", -1)).hasSize(2);
    assertThat(oldest).contains("The newest views").doesNotContain("Older views</a>");
    assertThat(clinic.signedIn(ADMINISTRATOR).get(path() + "/views").body())
        .contains("Petra Lindqvist", "who has seen the course");
    assertThat(prescriber.get(path() + "/views").statusCode()).isEqualTo(403);
  }

  @Test
  void a_watcher_finds_a_course_by_its_record_number_without_its_name() {
    String list = clinic.signedIn(AUDITOR).get("/views").body();

    assertThat(list)
        .contains(course.file().patient().recordNumber(), path() + "/views")
        .doesNotContain(man());
    assertLooked(AUDITOR, Screen.RECORD_NUMBERS);
  }
}
