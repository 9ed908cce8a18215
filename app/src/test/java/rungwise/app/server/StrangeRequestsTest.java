package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.springframework.http.HttpMethod;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.web.access.Access;
import rungwise.web.access.Route;
import rungwise.web.access.Routes;

/** Requests that no form of ours makes, and what is the same in every answer; on one server. */
class StrangeRequestsTest {

  private static final Clinic CLINIC = Clinic.withEverybody();
  private static final DemoClinic.Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Pattern FIELD = Pattern.compile("<input\\b[^>]*>", Pattern.DOTALL);
  private static final Pattern FIELD_NAME = Pattern.compile("\\bname=\"([^\"]+)\"");
  private static final Pattern ALGORITHM = Pattern.compile("\"alg\":(-?\\d+)");
  private static final int HEX_DIGITS_OF_128_BITS = 32;
  private static final Duration FIVE_YEARS = Duration.ofDays(5 * 365);

  @AfterAll
  static void close() {
    CLINIC.close();
  }

  /** What the server says to these very bytes, until it ends the connection. */
  private static String sent(String head, String body) throws IOException {
    try (var socket = new Socket(InetAddress.getLoopbackAddress(), CLINIC.uri().getPort())) {
      socket.setSoTimeout(10_000);
      socket
          .getOutputStream()
          .write((head + "\r\n\r\n" + body).getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String asked(String line, String... headers) throws IOException {
    return sent(
        line + " HTTP/1.1\r\nHost: localhost\r\nConnection: close" + lines(headers),
        /* body= */ "");
  }

  private static String lines(String... headers) {
    return Stream.of(headers).map(header -> "\r\n" + header).reduce("", String::concat);
  }

  private static int statusOf(String answer) {
    return Integer.parseInt(answer.substring("HTTP/1.1 ".length(), "HTTP/1.1 200".length()));
  }

  private static List<String> plainPages() {
    return Routes.TABLE.stream()
        .filter(route -> route.method().equals(HttpMethod.GET) && !route.path().contains("{"))
        .map(Route::path)
        .toList();
  }

  private static List<String> fieldsOf(String page) {
    return FIELD.matcher(page).results().map(MatchResult::group).toList();
  }

  @Test
  void what_was_typed_is_read_once_and_shown_as_it_was_typed() {
    Visitor administrator = CLINIC.signedIn(Clinic.ADMINISTRATOR);

    String page =
        administrator
            .fill(
                "/people/invite",
                Map.of("fullName", "a&amp;b %41 <b>\"x\" ${1+1}", "signInName", "no such name"))
            .body();

    assertThat(page)
        .contains("a&amp;amp;b %41 ")
        .contains("${1+1}")
        .doesNotContain("<b>\"x\"", "a&amp;b A");
  }

  @Test
  void a_line_that_was_typed_begins_no_header() throws IOException {
    String answer = asked("GET /sign-in?next=%2F%0d%0aX-Typed:%20yes");

    assertThat(statusOf(answer)).isEqualTo(200);
    assertThat(answer.substring(0, answer.indexOf("\r\n\r\n"))).doesNotContain("X-Typed");
  }

  @Test
  void no_other_site_is_allowed_to_read_an_answer() throws IOException {
    for (String line : List.of("GET /sign-in", "GET /assets/rungwise.css", "OPTIONS /sign-in")) {
      String answer =
          asked(line, "Origin: https://elsewhere.example", "Access-Control-Request-Method: POST");

      assertThat(answer).doesNotContainIgnoringCase("Access-Control-Allow");
    }
  }

  @Test
  void what_a_proxy_would_say_is_believed_of_nobody() throws IOException {
    String answer =
        asked(
            "GET /people",
            "X-Forwarded-Host: elsewhere.example",
            "X-Forwarded-Proto: https",
            "X-Original-URL: /sign-in",
            "X-HTTP-Method-Override: DELETE",
            "Forwarded: host=elsewhere.example");

    assertThat(answer).contains("Location: /sign-in").doesNotContain("elsewhere.example");
    assertThat(statusOf(answer)).isEqualTo(302);

    List<Integer> tries = IntStream.range(0, 7).map(StrangeRequestsTest::tryFrom).boxed().toList();
    assertThat(tries).containsExactly(422, 422, 422, 422, 422, 422, 429);
  }

  /** A wrong password from this machine that says it is passed on from elsewhere. */
  private static int tryFrom(int host) {
    Visitor page = CLINIC.visitor();
    String token = Visitor.token(page.get("/sign-in").body());
    String body = "signInName=passed.on&password=wrong&_csrf=" + token;
    try {
      return statusOf(
          sent(
              "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nCookie: rungwise="
                  + page.sessionId()
                  + "\r\nX-Forwarded-For: 203.0.113."
                  + host
                  + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                  + body.length(),
              body));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** RFC 9112, 6.1 and 6.3: a message whose end is in doubt is one message or none. */
  @Test
  void no_second_request_hides_in_the_body_of_the_first() throws IOException {
    String hidden = "GET /sign-in?hidden HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";
    String head = "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Length: ";

    String both = sent(head + "4\r\nTransfer-Encoding: chunked", "0\r\n\r\n" + hidden);
    String twice = sent(head + "0\r\nContent-Length: " + hidden.length(), hidden);
    String unknown = sent(head + "0\r\nTransfer-Encoding: own", hidden);

    assertThat(Stream.of(both, twice, unknown))
        .allSatisfy(answer -> assertThat(answer.split("HTTP/1\\.1 ", -1)).hasSize(2))
        .allSatisfy(answer -> assertThat(statusOf(answer)).isBetween(400, 501));
  }

  @Test
  void nothing_but_the_listed_files_is_handed_out() throws IOException {
    Visitor administrator = CLINIC.signedIn(Clinic.ADMINISTRATOR);
    for (String path :
        List.of(
            "/.git/config",
            "/.git/HEAD",
            "/.env",
            "/WEB-INF/web.xml",
            "/META-INF/MANIFEST.MF",
            "/assets",
            "/assets/",
            "/assets/..%2f..%2fetc/passwd",
            "/assets/%2e%2e/%2e%2e/etc/passwd",
            "/assets/rungwise.css.map",
            "/rungwise.db",
            "/journal.key",
            "/actuator/health",
            "/v3/api-docs")) {
      String answer = asked("GET " + path, "Cookie: rungwise=" + administrator.sessionId());

      assertThat(statusOf(answer)).as(path).isIn(400, 404);
      assertThat(answer).doesNotContain("root:", "[core]", "Index of");
    }
  }

  @Test
  void every_page_says_its_kind_and_its_letters_and_offers_to_sign_out() {
    for (DemoClinic.Member member : List.of(Clinic.ADMINISTRATOR, PRESCRIBER)) {
      Visitor visitor = CLINIC.signedIn(member);
      for (String path : plainPages()) {
        HttpResponse<String> answer = visitor.get(path);
        String kind = answer.headers().firstValue("Content-Type").orElse("none");
        if (answer.statusCode() / 100 != 3) {
          assertThat(kind).as(path).matches("(text/html|text/csv|text/plain);charset=UTF-8");
        }
        if (kind.startsWith("text/html") && !path.endsWith("/print")) {
          assertThat(answer.body()).as(path).contains("action=\"/sign-out\"");
        }
      }
    }
  }

  @Test
  void a_file_that_is_handed_out_has_a_name_of_ours() {
    HttpResponse<String> answer =
        CLINIC.signedIn(Clinic.ADMINISTRATOR).get("/audit.csv?filename=typed.exe&who=typed");

    assertThat(answer.headers().allValues("Content-Disposition"))
        .containsExactly("attachment; filename=\"audit-trail.csv\"");
  }

  @Test
  void passwords_are_masked_and_may_come_from_a_keeper_of_passwords() {
    Visitor administrator = CLINIC.signedIn(Clinic.ADMINISTRATOR);
    List<String> fields =
        Stream.of(
                CLINIC.visitor().get("/sign-in"),
                CLINIC.visitor().get("/welcome"),
                administrator.get("/account/password"))
            .flatMap(page -> fieldsOf(page.body()).stream())
            .filter(
                field -> field.matches("(?s).*name=\"(password|presentPassword|newPassword)\".*"))
            .toList();

    assertThat(fields)
        .hasSize(4)
        .allMatch(field -> field.contains("type=\"password\""))
        .allMatch(field -> field.matches("(?s).*autocomplete=\"(current|new)-password\".*"));
  }

  @Test
  void nobody_is_asked_for_a_hint_or_an_answer_to_a_question() {
    Set<String> known = Set.of("_csrf", "next", "signInName", "password", "code", "passkeyAnswer");
    for (Route route : Routes.TABLE) {
      if (route.access() instanceof Access.Anyone && route.path().matches("/sign-in|/welcome")) {
        assertThat(fieldsOf(CLINIC.visitor().get(route.path()).body()))
            .isNotEmpty()
            .allSatisfy(
                field -> {
                  var name = FIELD_NAME.matcher(field);
                  assertThat(name.find()).isTrue();
                  assertThat(name.group(1)).isIn(known);
                });
      }
    }
  }

  @Test
  void an_old_password_opens_the_same_page_as_a_new_one() {
    CLINIC.clock().moveOn(FIVE_YEARS);

    HttpResponse<String> answer =
        CLINIC.visitor().signIn(PRESCRIBER.signInName(), PRESCRIBER.password());

    assertThat(answer.statusCode()).isEqualTo(303);
    assertThat(Visitor.location(answer)).isEqualTo("/");
  }

  @Test
  void sessions_are_named_by_128_bits_that_never_come_twice() {
    List<String> names =
        IntStream.range(0, 100)
            .mapToObj(
                i -> {
                  Visitor visitor = CLINIC.visitor();
                  visitor.get("/sign-in");
                  return visitor.sessionId();
                })
            .toList();

    assertThat(names)
        .doesNotHaveDuplicates()
        .allMatch(name -> name.matches("[0-9A-F]{" + HEX_DIGITS_OF_128_BITS + "}"));
    // A place that had always one of two digits would show it in 100 names but for one in 2^93.
    assertThat(IntStream.range(0, HEX_DIGITS_OF_128_BITS))
        .allMatch(at -> names.stream().map(name -> name.charAt(at)).distinct().count() > 2);
  }

  @Test
  void a_field_that_is_there_twice_is_read_as_one_text_and_refused() {
    Visitor administrator = CLINIC.signedIn(Clinic.ADMINISTRATOR);
    int before = CLINIC.opened().people().list().size();

    HttpResponse<String> answer =
        administrator.postAll(
            "/people/invite",
            "/people/invite",
            List.of(
                Map.entry("fullName", "Oren Vale"),
                Map.entry("signInName", "first.name"),
                Map.entry("signInName", "second.name"),
                Map.entry("roles", "auditor")));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(CLINIC.opened().people().list()).hasSize(before);
  }

  @Test
  void a_new_passkey_is_asked_for_by_three_known_kinds_of_key() {
    // Passkeys need a name: by number of the address there are none.
    var prescriber = new Visitor(URI.create("http://localhost:" + CLINIC.uri().getPort() + "/"));
    prescriber.signIn(PRESCRIBER.signInName(), PRESCRIBER.password());

    String question = prescriber.post("/account", "/account/passkeys/questions", Map.of()).body();

    // IANA, COSE algorithms: ES256, EdDSA, RS256.
    assertThat(ALGORITHM.matcher(question).results().map(found -> found.group(1)))
        .containsExactlyInAnyOrder("-7", "-8", "-257");
  }

  @Test
  void who_signed_in_and_who_was_refused_is_on_record_with_the_time_in_utc() {
    CLINIC.visitor().signIn(PRESCRIBER.signInName(), "wrong");
    CLINIC.signedIn(PRESCRIBER);

    List<TrailLine> last = CLINIC.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 2);

    assertThat(last.stream().map(TrailLine::kind)).containsExactly("signed_in", "sign_in_refused");
    assertThat(last.stream().map(TrailLine::about).distinct()).hasSize(1);
    assertThat(last).allMatch(line -> line.at().equals(CLINIC.clock().instant()));
  }
}
