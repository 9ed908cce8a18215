package rungwise.app.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.Visitor;
import rungwise.store.journal.Inspected;

/** A clock that is watched, through the pages. */
class ClockPagesTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member AUDITOR = DemoClinic.MEMBERS.get(4);
  private static final String WRONG = "The clock of this server is wrong";
  private static final String YES = "Nothing on record stops him";
  private static final String NOT_KNOWN = "Not known: it is not known what time it is.";
  private static final String ASKED = "Clock not compared";

  private final Clinic clinic = Clinic.thatWatchesItsClock();
  private final Visitor prescriber = clinic.signedIn(PRESCRIBER);

  @AfterEach
  void close() {
    clinic.close();
  }

  private Instant now() {
    return clinic.clock().instant();
  }

  private List<String> courses() {
    return clinic.opened().courses().map(file -> file.id().text()).toList();
  }

  private HttpResponse<String> confirm(Visitor visitor, String date, String time) {
    return visitor.fill("/clock", Map.of("date", date, "time", time));
  }

  private HttpResponse<String> confirmNow(Visitor visitor) {
    String now = now().toString();
    return confirm(visitor, now.substring(0, 10), now.substring(11, 16));
  }

  /** All pages of courses, with the list. */
  private String pages() {
    var pages = new ArrayList<String>();
    pages.add(prescriber.get("/").body());
    for (String course : courses()) {
      HttpResponse<String> page = prescriber.get("/courses/" + course);
      assertThat(page.statusCode()).isEqualTo(200);
      pages.add(page.body());
    }
    return String.join("\n", pages);
  }

  @Test
  void until_somebody_has_confirmed_date_and_time_nobody_may_inject_and_then_as_ever() {
    assertThat(pages()).contains(ASKED, NOT_KNOWN).doesNotContain(YES);

    assertThat(confirmNow(clinic.signedIn(AUDITOR)).statusCode()).isEqualTo(303);

    assertThat(pages())
        .contains(ASKED, "Petra Lindqvist confirmed it", YES, "by a clock that is not compared")
        .doesNotContain(NOT_KNOWN);
    assertThat(clinic.opened().trail().kinds()).contains("clock_confirmed");
  }

  @Test
  void another_date_than_the_servers_confirms_nothing() {
    HttpResponse<String> answer = confirm(prescriber, "2026-03-01", "08:00");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("The server says", "value=\"2026-03-01\"");
    assertThat(pages()).doesNotContain(YES);
  }

  @Test
  void a_clock_that_jumps_is_named_on_every_page_and_signs_nothing_while_reports_are_taken() {
    confirmNow(prescriber);
    assertThat(pages()).contains(YES);

    clinic.clock().moveOn(Duration.ofDays(1));
    Visitor again = clinic.signedIn(PRESCRIBER);

    assertThat(clinic.visitor().get("/sign-in").body()).contains(WRONG);
    for (String path : List.of("/", "/room", "/preparations", "/protocols", "/dose", "/account")) {
      assertThat(again.get(path).body()).as(path).contains(WRONG);
    }
    for (String course : courses()) {
      assertThat(again.get("/courses/" + course).body()).contains(WRONG).doesNotContain(YES);
      assertThat(again.get("/courses/" + course + "/report").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void two_browsers_elsewhere_that_agree_compare_it_and_nothing_is_said() {
    clinic.watch().heard("192.0.2.7", now());
    clinic.watch().heard("192.0.2.8", now());

    assertThat(pages()).contains(YES).doesNotContain(ASKED, WRONG);
  }

  @Test
  void a_browser_of_this_machine_has_its_clock_and_is_not_asked() {
    String page = prescriber.get("/").body();
    assertThat(page).contains("/assets/clock.js");
    assertThat(prescriber.get("/assets/clock.js").body()).contains("/clock/browser");

    for (int i = 0; i < 2; i++) {
      HttpResponse<String> sent =
          prescriber.post(
              "/clock", "/clock/browser", Map.of("now", String.valueOf(now().toEpochMilli())));
      assertThat(sent.statusCode()).isEqualTo(204);
    }

    assertThat(prescriber.get("/").body()).contains(ASKED);
    assertThat(prescriber.post("/clock", "/clock/browser", Map.of("now", "yesterday")).statusCode())
        .isEqualTo(204);
  }

  @Test
  void each_entry_keeps_what_was_believed_and_the_chain_holds() throws SQLException {
    confirmNow(prescriber);
    prescriber.get("/courses/" + courses().getFirst());
    clinic.watch().told(now().minus(Duration.ofDays(1)));
    prescriber.get("/courses/" + courses().getFirst());
    clinic.watch().told(now());
    prescriber.get("/courses/" + courses().getFirst());

    assertThat(believed()).containsSubsequence("not_compared", "confirmed", "wrong", "compared");
    assertThat(clinic.whole()).isInstanceOf(Inspected.Whole.class);
  }

  private List<String> believed() throws SQLException {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = connection.createStatement();
        var rows =
            statement.executeQuery(
                "select clock_believed from entry where clock_believed is not null order by seq")) {
      var words = new ArrayList<String>();
      while (rows.next()) {
        words.add(rows.getString(1));
      }
      return words;
    }
  }
}
