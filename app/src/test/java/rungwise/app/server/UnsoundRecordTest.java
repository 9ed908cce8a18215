package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFile;

/** Pages of men whose record another program has changed while the server runs. */
@TestInstance(Lifecycle.PER_CLASS)
class UnsoundRecordTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final String NOT_SOUND = "This record is not as it was written";

  private final Clinic clinic = Clinic.withDemoStory();
  private final List<CourseFile> courses =
      clinic.opened().courseCases(new ClinicTime(ZoneOffset.UTC)).titration().all().stream()
          .map(state -> state.file())
          .toList();

  @AfterAll
  void close() {
    clinic.close();
  }

  /** The same clinic, changed while no server ran. */
  private static Clinic changedBefore(String sql) throws SQLException {
    try (Clinic untouched = Clinic.withDemoStory()) {
      untouched.server().close();
      try (var connection = DriverManager.getConnection("jdbc:sqlite:" + untouched.database());
          var statement = connection.createStatement()) {
        statement.execute("drop trigger protocol_signed_is_not_changed");
        statement.execute(sql);
      }
      return untouched.startedAgain();
    }
  }

  /** Changes a table as somebody with a database shell would, whatever forbids it. */
  private void change(String table, String set, String where) throws SQLException {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = connection.createStatement()) {
      statement.execute("drop trigger if exists " + table + "_is_not_changed");
      statement.execute("update " + table + " set " + set + " where " + where);
    }
  }

  private static String entriesOf(CourseFile course) {
    return "entry_id in (select id from entry where course_id = '" + course.id() + "')";
  }

  @Test
  void every_page_of_a_changed_course_says_so_and_none_says_that_nothing_stops_him()
      throws SQLException {
    CourseFile course =
        courses.stream().filter(one -> !one.reports().isEmpty()).findFirst().orElseThrow();
    change("injection_reported", "grade = (grade + 1) % 5", entriesOf(course));
    Visitor prescriber = clinic.signedIn(PRESCRIBER);

    for (String page :
        List.of(
            "",
            "/order",
            "/report",
            "/visit",
            "/screening",
            "/vial",
            "/before-home",
            "/call",
            "/reach",
            "/running",
            "/forecast")) {
      HttpResponse<String> answer = prescriber.get("/courses/" + course.id() + page);
      if (answer.statusCode() != 200) {
        assertThat(page).as("a page that not every course has").isEqualTo("/order");
        continue;
      }
      assertThat(answer.body())
          .as(page)
          .contains(NOT_SOUND, course.patient().fullName())
          .doesNotContain("Nothing on record stops him");
    }
    assertThat(prescriber.get("/").body()).contains("Record changed: rely on nothing in it");
  }

  @Test
  void a_course_of_which_nothing_can_be_made_is_named_and_hides_no_other_man() throws SQLException {
    CourseFile course = courses.getLast();
    change("course_opened", "birth_date = 'x'", entriesOf(course));
    Visitor prescriber = clinic.signedIn(PRESCRIBER);

    HttpResponse<String> page = prescriber.get("/courses/" + course.id());
    HttpResponse<String> today = prescriber.get("/");

    assertThat(page.statusCode()).isEqualTo(503);
    assertThat(page.body()).contains("The record of this man cannot be read");
    assertThat(today.statusCode()).isEqualTo(200);
    assertThat(today.body())
        .contains("record cannot be read", courses.get(1).patient().fullName())
        .doesNotContain(course.patient().fullName());
    assertThat(prescriber.get("/room").statusCode()).isEqualTo(200);
  }

  @Test
  void a_man_whose_record_cannot_be_read_is_not_left_out_of_the_room_without_a_word()
      throws SQLException {
    try (Clinic another = Clinic.withDemoStory()) {
      CourseFile observed =
          another
              .opened()
              .courses()
              .filter(one -> !one.observing().isEmpty())
              .findFirst()
              .orElseThrow();
      try (var connection = DriverManager.getConnection("jdbc:sqlite:" + another.database());
          var statement = connection.createStatement()) {
        statement.execute("drop trigger course_opened_is_not_changed");
        statement.execute(
            "update course_opened set birth_date = 'x' where entry_id in (select id from entry"
                + " where course_id = '"
                + observed.id()
                + "')");
      }
      Visitor prescriber = another.signedIn(PRESCRIBER);

      assertThat(prescriber.get("/room").body())
          .contains("1 man more may be under observation: his record cannot be read");
      HttpResponse<String> closed = prescriber.post("/room", "/room/close", java.util.Map.of());
      assertThat(closed.statusCode()).isEqualTo(422);
      assertThat(closed.body()).contains("The day cannot be closed");
    }
  }

  @Test
  void a_page_that_fails_over_a_damaged_file_says_so_and_leads_to_the_call() throws SQLException {
    try (Clinic another = Clinic.withDemoStory()) {
      try (var connection = DriverManager.getConnection("jdbc:sqlite:" + another.database());
          var statement = connection.createStatement()) {
        statement.execute("alter table day_row rename to day_raw");
      }
      Visitor prescriber = another.signedIn(PRESCRIBER);
      HttpResponse<String> today = prescriber.get("/");

      assertThat(today.statusCode()).isEqualTo(503);
      assertThat(today.body()).contains("The record is damaged", "href=\"/call\"");
      assertThat(prescriber.get("/call").statusCode()).isEqualTo(200);
      CourseFile course = another.opened().courses().findFirst().orElseThrow();
      assertThat(prescriber.get("/courses/" + course.id() + "/report").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void a_changed_protocol_stops_every_course_from_the_start_of_the_server_on() throws SQLException {
    try (Clinic another = changedBefore("update protocol_signed set document = document || ' '")) {
      Visitor prescriber = another.signedIn(PRESCRIBER);

      assertThat(prescriber.get("/courses/" + courses.get(2).id()).body())
          .contains(NOT_SOUND, "people, preparations or protocols are not as they were written")
          .doesNotContain("Nothing on record stops him");
    }
  }
}
