package rungwise.app.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;
import rungwise.app.forms.PageForms.PageForm;
import rungwise.app.server.Clinic;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.Visitor;
import rungwise.store.journal.Inspected;
import rungwise.web.access.Routes;

/**
 * Every form of every page with values that nobody means: no failure, and nothing written unless
 * the answer leads on as it does when something was saved. The same seed sends the same forms;
 * {@code -Drungwise.fuzz=N} sends each form N times, {@code -Drungwise.forms=N} begins anew with
 * another copy of the invented clinic until N were sent.
 */
final class HostileFormsTest {

  private static final long SEED = Long.getLong("rungwise.seed", 20260302);
  private static final int TIMES = Integer.getInteger("rungwise.fuzz", 3);
  private static final int LEAST = Integer.getInteger("rungwise.forms", 1);
  private static final int MOST_PAGES = 120;
  private static final int FAILURE = 500;

  /** Whatever would end the session or the account that sends the forms. */
  private static final List<String> ENDS_IT =
      List.of("/sign-out", "/deactivate", "/new-code", "/roles");

  private static final List<String> HOSTILE =
      List.of(
          "",
          " ",
          "0",
          "-1",
          "1e3",
          "NaN",
          "1",
          "12",
          "0.2",
          "0,2",
          ".5",
          "1.0",
          "99999999999999999999999",
          "9223372036854775807",
          "2147483648",
          "\u0663",
          "\uD835\uDFD9",
          "\u0000",
          "\uFFFF",
          "\u202E\u200B",
          "<script>alert(1)</script>",
          "' or 1=1 --",
          "../../etc/passwd",
          "${7*7}",
          "%s%n%x",
          "\r\nSet-Cookie: a=b",
          "2026-02-30",
          "2026-13-01",
          "0000-00-00",
          "+999999999-12-31",
          "9999-12-31",
          "1900-01-01",
          "24:00",
          "12:60",
          "03:30",
          "on",
          "true",
          "not_known",
          "HIS_LEFT",
          "00000000-0000-0000-0000-000000000000",
          "\uD83D\uDE00".repeat(60),
          "a".repeat(20_000),
          "\n".repeat(300));

  private static final int OK = 200;
  private static final Duration UNTIL_THE_NEXT_TRY = Duration.ofMinutes(1);

  /** How often each status was the answer. */
  private static final Map<Integer, Integer> answers = new TreeMap<>();

  private static Clinic clinic;
  private static Connection database;
  private static PreparedStatement counting;

  @BeforeAll
  static void open() throws SQLException {
    clinic = Clinic.withDemoStory();
    assertThat(clinic.opened().coursesOf("HL-1017")).isNotEmpty();
    database = DriverManager.getConnection("jdbc:sqlite:" + clinic.database());
    counting = counting(database);
    assertThat(rows()).isPositive();
  }

  @AfterAll
  static void close() throws SQLException {
    counting.close();
    database.close();
    clinic.close();
  }

  /** How many rows there are that are neither a look nor a try at signing in. */
  private static long rows() throws SQLException {
    try (var count = counting.executeQuery()) {
      return count.getLong(1);
    }
  }

  /** Asks for that again and again, on one connection that reads what the server has written. */
  private static PreparedStatement counting(Connection raw) throws SQLException {
    List<String> counts = new ArrayList<>();
    try (var statement = raw.createStatement();
        var names =
            statement.executeQuery(
                "select m.name from sqlite_master m join pragma_table_info(m.name) c"
                    + " where m.type = 'table' and c.name = 'entry_id'"
                    + " and m.name not in ('page_viewed', 'page_viewed_course', 'sign_in')")) {
      while (names.next()) {
        counts.add("select count(*) as n from " + names.getString(1));
      }
    }
    return raw.prepareStatement("select sum(n) from (" + String.join(" union all ", counts) + ")");
  }

  /** Every page that can be reached by links, with the forms on it. */
  private static Map<String, List<PageForm>> pages(Visitor visitor) {
    var found = new LinkedHashMap<String, List<PageForm>>();
    var open = new ArrayDeque<String>(List.of("/"));
    Set<String> seen = new HashSet<>(open);
    while (!open.isEmpty() && found.size() < MOST_PAGES) {
      String path = open.remove();
      HttpResponse<String> answer = visitor.get(path);
      assertThat(answer.statusCode()).as(path).isLessThan(FAILURE);
      PageForms page = PageForms.of(path, answer.body());
      found.put(path, page.forms());
      page.links().stream().filter(seen::add).forEach(open::add);
    }
    return found;
  }

  @Test
  void no_form_fails_and_none_writes_what_it_did_not_say_was_saved() throws SQLException {
    var random = new Random(SEED);
    int sent = sendAll(random);
    while (sent < LEAST) {
      close();
      open();
      sent += sendAll(random);
    }

    System.out.printf("%d hostile forms, seed %d, answers %s%n", sent, SEED, answers);
    assertThat(sent).isGreaterThan(100);
    assertThat(answers).containsKeys(303, 422);
  }

  /** One round over every form that somebody sees, and those that nobody does. */
  private static int sendAll(Random random) throws SQLException {
    Set<String> met = new LinkedHashSet<>();
    int sent = 0;
    for (int who : List.of(2, 1, 0)) { // the educator, the prescriber, the administrator
      Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(who));
      for (Map.Entry<String, List<PageForm>> page : pages(visitor).entrySet()) {
        for (int at = 0; at < page.getValue().size(); at++) {
          visitor = stillSignedIn(visitor, who);
          sent += sendAll(visitor, page.getKey(), at, met, random);
        }
      }
    }
    sendUnmet(met, random);
    assertThat(clinic.whole()).isInstanceOf(Inspected.Whole.class);
    return sent;
  }

  /** A form may have ended the session that sent it, or used up the tries at the password. */
  private static Visitor stillSignedIn(Visitor visitor, int who) {
    clinic.clock().moveOn(UNTIL_THE_NEXT_TRY);
    return visitor.get("/account").statusCode() == OK
        ? visitor
        : clinic.signedIn(DemoClinic.MEMBERS.get(who));
  }

  private static int sendAll(Visitor visitor, String page, int at, Set<String> met, Random random)
      throws SQLException {
    int sent = 0;
    for (int time = 0; time < TIMES; time++) {
      List<PageForm> now = PageForms.of(page, visitor.get(page).body()).forms();
      if (at >= now.size() || ENDS_IT.stream().anyMatch(now.get(at).action()::endsWith)) {
        return sent;
      }
      PageForm form = now.get(at);
      if (patternOf(form.action()).filter(pattern -> isEnough(pattern, met)).isPresent()) {
        return sent;
      }
      met.add(form.action());
      send(visitor, form, random);
      sent++;
    }
    return sent;
  }

  /** The same form of twenty courses says nothing more than that of four. */
  private static boolean isEnough(String pattern, Set<String> met) {
    return met.stream().filter(path -> matches(pattern, path)).count() > 4;
  }

  private static void send(Visitor visitor, PageForm form, Random random) throws SQLException {
    var fields = new LinkedHashMap<>(form.hidden());
    form.fields().forEach((name, offered) -> put(fields, name, offered, random));
    long before = rows();

    HttpResponse<String> answer = visitor.postRaw(form.action(), fields);

    String what = form.action() + " " + fields.toString().replaceAll("[^ -~]", "?");
    String told = what.length() > 2000 ? what.substring(0, 2000) : what;
    assertThat(answer.statusCode()).as("seed %d: %s", SEED, told).isLessThan(FAILURE);
    answers.merge(answer.statusCode(), 1, Integer::sum);
    boolean isSaved = answer.statusCode() / 100 == 3;
    if (!isSaved) {
      assertThat(rows()).as("seed %d: %s", SEED, told).isEqualTo(before);
    }
  }

  private static void put(
      Map<String, String> fields, String name, List<String> offered, Random random) {
    switch (random.nextInt(4)) {
      case 0, 1 -> fields.put(name, HOSTILE.get(random.nextInt(HOSTILE.size())));
      case 2 -> fields.put(name, offered.get(random.nextInt(offered.size())));
      default -> {} // left out
    }
  }

  /** Forms that no page shows now, and those that end a session: with ids that are nobody's. */
  private static void sendUnmet(Set<String> met, Random random) throws SQLException {
    for (int who : List.of(2, 1, 0)) {
      Visitor visitor = clinic.signedIn(DemoClinic.MEMBERS.get(who));
      for (var route : Routes.TABLE) {
        boolean isMet = met.stream().anyMatch(path -> matches(route.path(), path));
        if (!route.method().equals(HttpMethod.POST) || isMet || route.path().equals("/sign-out")) {
          continue;
        }
        for (String id : List.of("00000000-0000-0000-0000-000000000000", "x", "%00", "..%2f")) {
          String path = route.path().replaceAll("\\{[^}]*}", id.replace("%", "%25"));
          visitor = stillSignedIn(visitor, who);
          var token = Visitor.token(visitor.get("/account").body());
          send(
              visitor,
              new PageForm(path, Map.of("_csrf", token), Map.of("reason", List.of("x"))),
              random);
        }
      }
    }
  }

  private static Optional<String> patternOf(String path) {
    return Routes.TABLE.stream()
        .filter(route -> route.method().equals(HttpMethod.POST))
        .map(route -> route.path())
        .filter(pattern -> matches(pattern, path))
        .findFirst();
  }

  private static boolean matches(String pattern, String path) {
    PathPattern parsed = PathPatternParser.defaultInstance.parse(pattern);
    return parsed.matches(PathContainer.parsePath(path.replaceFirst("\\?.*$", "")));
  }
}
