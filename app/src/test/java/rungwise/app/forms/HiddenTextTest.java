package rungwise.app.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.springframework.http.HttpMethod;
import org.springframework.web.util.HtmlUtils;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.Visitor;
import rungwise.clinic.people.Account;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;

/** No form of any page takes a text with a character that nobody can see. */
@TestInstance(Lifecycle.PER_CLASS)
final class HiddenTextTest {

  /** The order of reading is turned around, and a letter is parted from the next unseen. */
  private static final String HIDDEN = "seen \u202Eand\u200B told";

  private static final String CLEANED = "seen and told";
  private static final String SAYS = "that nobody can see";
  private static final int REFUSED = 422;

  private final Clinic clinic = Clinic.withDemoStory();

  @AfterAll
  void close() {
    clinic.close();
  }

  private Account account(Member member) {
    return clinic.opened().people().list().stream()
        .filter(one -> one.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  private String address(Route route) {
    String course = clinic.opened().courses().findFirst().orElseThrow().id().text();
    return route
        .path()
        .replace("{version}", "1")
        .replace("/courses/{id}", "/courses/" + course)
        .replaceAll("\\{[a-z]+\\}", "00000000-0000-4000-8000-000000000001");
  }

  @Test
  void every_route_that_takes_a_form_refuses_such_a_text_whatever_its_field_is_called() {
    var taken = new TreeMap<String, Integer>();
    Set<String> asked = new HashSet<>();
    for (Member member : DemoClinic.MEMBERS.subList(0, 3)) {
      Visitor visitor = clinic.signedIn(member);
      for (Route route : Routes.TABLE) {
        if (!route.method().equals(HttpMethod.POST)
            || !route.access().admits(account(member))
            || !asked.add(route.path())) {
          continue;
        }
        HttpResponse<String> answer =
            visitor.post("/account", address(route), Map.of("whatever", HIDDEN, "other", "kept"));
        boolean isRefused =
            answer.statusCode() == REFUSED
                && answer.body().contains(SAYS)
                && answer.body().contains("value=\"" + CLEANED + "\"")
                && answer.body().contains("value=\"kept\"");
        if (!isRefused) {
          taken.put(route.path(), answer.statusCode());
        }
      }
    }

    assertThat(taken).isEmpty();
    assertThat(asked).hasSizeGreaterThan(60);
  }

  @Test
  void every_form_of_every_page_shows_it_without_and_no_table_holds_it() throws SQLException {
    var lost = new TreeMap<String, String>();
    Set<String> sent = new HashSet<>();
    for (Member member : DemoClinic.MEMBERS.subList(1, 3)) {
      Visitor visitor = clinic.signedIn(member);
      WalkedPages.of(visitor)
          .forEach(
              (page, forms) ->
                  forms.stream()
                      .filter(form -> sent.add(WalkedPages.routeOf(form.action())))
                      .forEach(form -> send(visitor, form, lost)));
    }

    assertThat(lost).isEmpty();
    assertThat(holding("\u202E")).isEmpty();
  }

  private void send(Visitor visitor, FilledForm form, Map<String, String> lost) {
    var fields = new ArrayList<Map.Entry<String, String>>();
    int hidden = 0;
    for (FilledForm.Control control : form.controls()) {
      if (control.kind() == FilledForm.Kind.TEXT) {
        fields.add(Map.entry(control.name(), HIDDEN));
        hidden++;
      } else if (!control.name().equals("_csrf") && control.kind() != FilledForm.Kind.SECRET) {
        control.holds().forEach(value -> fields.add(Map.entry(control.name(), value)));
      }
    }
    if (hidden == 0) {
      return;
    }
    String answer =
        HtmlUtils.htmlUnescape(visitor.postAll("/account", form.action(), fields).body());
    List<FilledForm> shown = FilledForm.of(form.action(), answer);
    boolean isShown =
        shown.stream()
            .filter(one -> one.action().equals(form.action()))
            .anyMatch(
                one ->
                    form.controls().stream()
                        .filter(control -> control.kind() == FilledForm.Kind.TEXT)
                        .allMatch(
                            control ->
                                one.control(control.name())
                                    .filter(now -> now.holds().contains(CLEANED))
                                    .isPresent()));
    if (!answer.contains(SAYS) || !isShown) {
      lost.put(form.action(), answer);
    }
  }

  /** Every column of a table in which a text stands. */
  private List<String> holding(String text) throws SQLException {
    var found = new ArrayList<String>();
    try (var raw = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
        var statement = raw.createStatement()) {
      var columns = new ArrayList<String[]>();
      try (var names =
          statement.executeQuery(
              "select m.name, c.name from sqlite_master m join pragma_table_info(m.name) c"
                  + " where m.type = 'table'")) {
        while (names.next()) {
          columns.add(new String[] {names.getString(1), names.getString(2)});
        }
      }
      for (String[] column : columns) {
        String sql =
            "select count(*) from \"%s\" where instr(\"%s\", '%s') > 0"
                .formatted(column[0], column[1], text);
        try (var count = statement.executeQuery(sql)) {
          if (count.getLong(1) > 0) {
            found.add(column[0] + "." + column[1]);
          }
        }
      }
    }
    return found;
  }

  @Test
  void what_is_shown_without_it_is_taken_when_it_is_sent_on() {
    Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(1));
    String path = "/men";

    assertThat(visitor.post("/account", path, Map.of("typed", HIDDEN)).statusCode())
        .isEqualTo(REFUSED);
    assertThat(visitor.post("/account", path, Map.of("typed", CLEANED)).statusCode())
        .isNotEqualTo(REFUSED);
  }

  @Test
  void a_password_is_asked_for_again_and_never_sent_back() {
    Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(1));
    String password = "harbour-lantern-fourteen";

    String answer =
        visitor
            .post("/account", "/sign-in", Map.of("signInName", HIDDEN, "password", password))
            .body();

    assertThat(answer).contains(SAYS, "name=\"password\" type=\"password\"");
    assertThat(answer).doesNotContain(password);
  }

  @Test
  void a_joiner_stays_where_a_script_joins_by_it_and_nowhere_else() {
    Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(1));
    // The Unicode Standard, 23.2: Persian parts letters by it, Sinhala joins them by the other.
    Map<String, String> written =
        Map.of("typed", "\u0645\u06CC\u200C\u062E\u0648\u0627\u0647\u0645");
    Map<String, String> joined = Map.of("typed", "\u0DC1\u0DCA\u200D\u0DBB\u0DD3");

    assertThat(visitor.post("/account", "/men", written).statusCode()).isNotEqualTo(REFUSED);
    assertThat(visitor.post("/account", "/men", joined).statusCode()).isNotEqualTo(REFUSED);
    assertThat(visitor.post("/account", "/men", Map.of("typed", "Cor\u200Cvin")).statusCode())
        .isEqualTo(REFUSED);
  }
}
