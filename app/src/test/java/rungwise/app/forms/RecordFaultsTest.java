package rungwise.app.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.web.util.HtmlUtils;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.Visitor;
import rungwise.clinic.course.CourseFile;

/** What a page tells of a changed record, and how two people acknowledge it. */
final class RecordFaultsTest {

  private static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member EDUCATOR = DemoClinic.MEMBERS.get(2);
  private static final String PAGE = "/record-faults";
  private static final String NOT_SOUND = "This record is not as it was written";

  private final Clinic clinic = Clinic.withDemoStory();

  @AfterEach
  void close() {
    clinic.close();
  }

  private CourseFile change() throws SQLException {
    CourseFile course =
        clinic.opened().courses().filter(one -> !one.reports().isEmpty()).findFirst().orElseThrow();
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = connection.createStatement()) {
      statement.execute("drop trigger if exists injection_reported_is_not_changed");
      statement.execute(
          "update injection_reported set grade = 4 - grade where grade <> 2 and entry_id = '"
              + course.reports().getFirst().entry().id()
              + "'");
    }
    return course;
  }

  private Clinic changedBefore(String sql) throws SQLException {
    clinic.server().close();
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = connection.createStatement()) {
      statement.execute("drop trigger if exists protocol_signed_is_not_changed");
      statement.execute("drop trigger if exists entry_is_not_removed");
      statement.execute("pragma foreign_keys = off");
      statement.execute(sql);
    }
    return clinic.startedAgain();
  }

  @Test
  void what_every_course_rests_on_is_told_on_every_page_with_its_way_out() throws SQLException {
    try (Clinic another = changedBefore("update protocol_signed set document = document || ' '")) {
      String page = HtmlUtils.htmlUnescape(another.signedIn(ADMINISTRATOR).get(PAGE).body());
      assertThat(page)
          .contains(
              "people, preparations or protocols are not as they were written.",
              "Every course is stopped",
              "Copy the whole data folder",
              "rungwise restore",
              "It cannot be acknowledged")
          .doesNotContain("Every course is as it was written");

      for (String path : List.of("/", "/preparations", "/protocols", "/room", "/account")) {
        assertThat(another.signedIn(PRESCRIBER).get(path).body())
            .as(path)
            .contains("The record of the clinic is not as it was written", PAGE);
      }
      assertThat(another.signedIn(EDUCATOR).get("/").body())
          .contains("The record of the clinic is not as it was written", "Tell your administrator")
          .doesNotContain("href=\"" + PAGE);
      assertThat(another.visitor().get("/call").body())
          .doesNotContain("The record of the clinic is not as it was written");
    }
  }

  @Test
  void a_removed_entry_is_told_with_its_way_out_and_cannot_be_acknowledged() throws SQLException {
    CourseFile course =
        clinic.opened().courses().filter(one -> !one.reports().isEmpty()).findFirst().orElseThrow();
    try (Clinic another =
        changedBefore(
            "delete from entry where id = '" + course.reports().getLast().entry().id() + "'")) {
      String page = HtmlUtils.htmlUnescape(another.signedIn(ADMINISTRATOR).get(PAGE).body());

      assertThat(page)
          .contains(
              course.patient().recordNumber(),
              "does not have the entries that were written",
              "It cannot be acknowledged")
          .doesNotContain("Acknowledge this fault");
    }
  }

  private HttpResponse<String> acknowledge(Visitor visitor, CourseFile course, String reason) {
    FilledForm form =
        FilledForm.of(PAGE, visitor.get(PAGE).body()).stream()
            .filter(one -> one.action().equals(PAGE + "/" + course.id()))
            .findFirst()
            .orElseThrow();
    String shown = form.control("shown").orElseThrow().holds().getFirst();
    return visitor.post(PAGE, form.action(), Map.of("shown", shown, "reason", reason));
  }

  @Test
  void a_sound_record_says_so_and_who_has_no_part_in_it_is_not_let_in() {
    assertThat(clinic.signedIn(ADMINISTRATOR).get(PAGE).body())
        .contains("Every course is as it was written");
    assertThat(clinic.signedIn(EDUCATOR).get(PAGE).statusCode()).isEqualTo(403);
  }

  @Test
  void the_administrator_is_told_step_by_step_and_sees_no_name() throws SQLException {
    CourseFile course = change();
    long entry = course.reports().getFirst().entry().number();

    assertThat(HtmlUtils.htmlUnescape(clinic.signedIn(ADMINISTRATOR).get(PAGE).body()))
        .contains(
            course.patient().recordNumber(),
            "entry " + entry + " of his record was changed",
            "Copy the whole data folder",
            "rungwise restore",
            "two people acknowledge")
        .doesNotContain(course.patient().fullName());
  }

  @Test
  void two_people_acknowledge_it_and_the_course_goes_on_without_its_proof() throws SQLException {
    CourseFile course = change();
    Visitor administrator = clinic.signedIn(ADMINISTRATOR);
    Visitor prescriber = clinic.signedIn(PRESCRIBER);

    assertThat(acknowledge(administrator, course, "no sound backup").statusCode()).isEqualTo(303);
    assertThat(administrator.get(PAGE).body()).contains("Acknowledged by Ines Halloran");
    HttpResponse<String> twice = acknowledge(administrator, course, "typed \"again\"");
    assertThat(twice.statusCode()).isEqualTo(422);
    assertThat(HtmlUtils.htmlUnescape(twice.body()))
        .contains("must be another person's", "value=\"typed \"again\"\"");
    assertThat(prescriber.get("/courses/" + course.id()).body()).contains(NOT_SOUND);

    assertThat(acknowledge(prescriber, course, "no sound backup").statusCode()).isEqualTo(303);

    assertThat(prescriber.get(PAGE).body())
        .contains("Both have acknowledged it", "Every course is as it was written");
    assertThat(prescriber.get("/courses/" + course.id() + "/record").body())
        .contains("Acknowledged as prescriber")
        .doesNotContain(NOT_SOUND);
    assertThat(prescriber.get("/courses/" + course.id()).body())
        .contains("nobody knows")
        .doesNotContain(NOT_SOUND, "Nothing on record stops him");
  }
}
