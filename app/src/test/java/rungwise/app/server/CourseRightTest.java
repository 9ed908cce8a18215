package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.Look;
import rungwise.clinic.audit.Screen;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;

@TestInstance(Lifecycle.PER_CLASS)
class CourseRightTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member EDUCATOR = DemoClinic.MEMBERS.get(2);
  private static final Member ON_CALL = DemoClinic.MEMBERS.get(3);
  private static final Member AUDITOR = DemoClinic.MEMBERS.get(4);
  private static final String ASKS = "Say why you open this course";

  private final Clinic clinic = Clinic.withDemoStory();
  private final List<CourseFile> courses =
      clinic.opened().courseCases(new ClinicTime(ZoneOffset.UTC)).titration().all().stream()
          .map(state -> state.file())
          .toList();
  private int next = 0;

  @AfterAll
  void close() {
    clinic.close();
  }

  /** A course that no other test of this class has opened. */
  private CourseFile course() {
    return courses.get(next++);
  }

  private static String path(CourseFile course) {
    return "/courses/" + course.id();
  }

  private List<Look> looks(CourseId course) {
    return clinic.opened().viewing().of(course, OptionalLong.empty()).orElseThrow().looks();
  }

  private static Map<String, String> reason(String reason, String words, String page) {
    return Map.of("accessSent", "yes", "accessReason", reason, "accessWords", words, "next", page);
  }

  @Test
  void who_treats_opens_every_course_and_is_not_asked() {
    CourseFile course = course();

    for (Member member : List.of(PRESCRIBER, EDUCATOR)) {
      HttpResponse<String> page = clinic.signedIn(member).get(path(course));
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.body()).contains(course.patient().fullName());
    }
  }

  @Test
  void the_on_call_clinician_sees_nothing_of_a_course_before_he_says_why() {
    CourseFile course = course();
    Visitor onCall = clinic.signedIn(ON_CALL);
    int before = looks(course.id()).size();

    for (String page : List.of("", "/order", "/screening", "/vial", "/visit", "/report")) {
      HttpResponse<String> asked = onCall.get(path(course) + page);
      assertThat(asked.statusCode()).as(page).isEqualTo(403);
      assertThat(asked.body())
          .as(page)
          .contains(ASKS)
          .doesNotContain(course.patient().fullName(), course.patient().recordNumber());
    }

    assertThat(looks(course.id())).hasSize(before);
  }

  @Test
  void with_a_reason_he_goes_on_where_he_was_and_the_administrator_reads_it() {
    CourseFile course = course();
    CourseFile another = course();
    Visitor onCall = clinic.signedIn(ON_CALL);
    String wanted = path(course) + "/screening";

    HttpResponse<String> taken =
        onCall.post(
            wanted, path(course) + "/access", reason("OTHER", "asked by his partner", wanted));

    assertThat(Visitor.location(taken)).isEqualTo(wanted);
    assertThat(onCall.get(wanted).body()).contains(course.patient().fullName());
    assertThat(looks(course.id()).getFirst().screen()).isEqualTo(Screen.SCREENING);
    assertThat(onCall.get(path(another)).body()).contains(ASKS);
    for (Member watcher : List.of(Clinic.ADMINISTRATOR, AUDITOR)) {
      assertThat(clinic.signedIn(watcher).get("/access-taken").body())
          .contains(ON_CALL.fullName(), "asked by his partner", course.patient().recordNumber())
          .doesNotContain(course.patient().fullName());
    }
  }

  @Test
  void it_ends_after_twelve_hours_and_a_form_that_was_begun_is_not_lost() {
    CourseFile course = course();
    Visitor onCall = clinic.signedIn(ON_CALL);
    onCall.post(path(course), path(course) + "/access", reason("CALLED", "", path(course)));
    assertThat(onCall.get(path(course)).statusCode()).isEqualTo(200);
    clinic.clock().moveOn(Duration.ofHours(12));
    onCall.signIn(ON_CALL.signInName(), ON_CALL.password());

    HttpResponse<String> asked =
        onCall.post("/account", path(course) + "/vial", Map.of("lot", "A-\"1\""));

    assertThat(asked.statusCode()).isEqualTo(403);
    assertThat(asked.body())
        .contains(ASKS, "action=\"" + path(course) + "/vial\"", "value=\"A-&#34;1&#34;\"");
    HttpResponse<String> sent =
        onCall.post(
            "/account",
            path(course) + "/vial",
            Map.of("lot", "A-1", "accessSent", "yes", "accessReason", "CALLED"));
    assertThat(sent.body()).doesNotContain(ASKS).contains(course.patient().fullName());
  }

  @Test
  void a_missing_reason_is_asked_again_and_opens_nothing() {
    CourseFile course = course();
    Visitor onCall = clinic.signedIn(ON_CALL);

    HttpResponse<String> answer =
        onCall.post(path(course), path(course) + "/access", reason("OTHER", " ", path(course)));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("The words are missing");
    assertThat(onCall.get(path(course)).body()).contains(ASKS);
  }

  @Test
  void a_link_takes_no_access() {
    CourseFile course = course();
    Visitor onCall = clinic.signedIn(ON_CALL);

    HttpResponse<String> answer = onCall.get(path(course) + "?accessSent=yes&accessReason=CALLED");

    assertThat(answer.body()).contains(ASKS);
    assertThat(onCall.get(path(course)).body()).contains(ASKS);
  }

  @Test
  void neither_administrator_nor_auditor_can_take_it() {
    CourseFile course = course();

    for (Member member : List.of(Clinic.ADMINISTRATOR, AUDITOR)) {
      Visitor visitor = clinic.signedIn(member);
      HttpResponse<String> answer =
          visitor.post("/account", path(course) + "/access", reason("CALLED", "", path(course)));
      assertThat(answer.statusCode()).isEqualTo(403);
      assertThat(answer.body()).contains("This page is not open to you");
    }
  }

  @Test
  void the_day_s_list_tells_the_on_call_clinician_who_is_there_and_not_which_dose() {
    String list = clinic.signedIn(ON_CALL).get("/").body();
    String treating = clinic.signedIn(PRESCRIBER).get("/").body();

    assertThat(list).contains(courses.getFirst().patient().fullName()).doesNotContain("unit mark");
    assertThat(treating).contains("unit mark");
  }
}
