package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;

class IncidentTest {

  private static final int GONE = 20;

  @Test
  void what_was_typed_reaches_no_log() {
    PrintStream before = System.err;
    var log = new ByteArrayOutputStream();
    System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
    try (Clinic clinic = Clinic.withEverybody()) {
      Visitor lead = clinic.signedIn(DemoClinic.MEMBERS.get(1));
      lead.post("/", "/protocols/sample/mr-secret/sign", Map.of());
      lead.get("/people/mr-secret?name=mr-secret");
      lead.get("/mr-secret");
      clinic.visitor().signIn("mr-secret", "mr-secret");
    } finally {
      System.setErr(before);
    }

    assertThat(log.toString(StandardCharsets.UTF_8))
        .contains("Signed in")
        .doesNotContain("mr-secret", "Tobias");
    assertThat(log.toString(StandardCharsets.UTF_8).lines().filter(l -> l.contains(" INFO ")))
        .isNotEmpty()
        .allMatch(line -> line.matches("\\d{4}-\\d\\d-\\d\\dT[0-9:.]{12}Z INFO .*"));
  }

  @Test
  void who_leaves_before_the_answer_is_no_incident_and_holds_up_nobody() throws Exception {
    PrintStream before = System.err;
    var log = new ByteArrayOutputStream();
    System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
    try (Clinic clinic = Clinic.withDemoStory()) {
      Visitor auditor = clinic.signedIn(DemoClinic.MEMBERS.get(4));
      assertThat(auditor.get("/audit.csv").body().length()).isGreaterThan(10_000);
      for (int one = 0; one < GONE; one++) {
        askAndLeave(clinic, auditor.sessionId());
      }

      assertThat(auditor.get("/audit").statusCode()).isEqualTo(200);
      for (int waited = 0; waited < 100 && readAsFile(log) <= GONE; waited++) {
        Thread.sleep(100);
      }
      assertThat(readAsFile(log)).isEqualTo(GONE + 1);
    } finally {
      System.setErr(before);
    }

    assertThat(log.toString(StandardCharsets.UTF_8))
        .contains("Whoever had asked is gone")
        .doesNotContain("Incident ");
  }

  private static long readAsFile(ByteArrayOutputStream log) {
    return log.toString(StandardCharsets.UTF_8)
        .lines()
        .filter(l -> l.contains("as a file"))
        .count();
  }

  /** Asks and resets the connection at once. */
  private static void askAndLeave(Clinic clinic, String session) throws IOException {
    try (var socket = new Socket(InetAddress.getLoopbackAddress(), clinic.uri().getPort())) {
      socket.setSoLinger(/* on= */ true, 0);
      socket
          .getOutputStream()
          .write(
              ("GET /audit.csv HTTP/1.1\r\nHost: localhost\r\nCookie: rungwise="
                      + session
                      + "\r\n\r\n")
                  .getBytes(StandardCharsets.US_ASCII));
    }
  }

  @Test
  void a_form_that_is_too_large_is_refused_in_words_and_is_no_failure() {
    try (Clinic clinic = Clinic.withEverybody()) {
      Visitor lead = clinic.signedIn(DemoClinic.MEMBERS.get(1));

      HttpResponse<String> fits =
          lead.post(
              "/populations/new", "/populations/new", Map.of("document", "a".repeat(200_000)));
      HttpResponse<String> isShownAgain =
          lead.post(
              "/populations/new",
              "/populations/new",
              Map.of("document", "a".repeat(300_000), "other", "kept"));
      HttpResponse<String> isTooLarge =
          lead.post(
              "/populations/new", "/populations/new", Map.of("document", "a".repeat(1_100_000)));

      assertThat(fits.statusCode()).isEqualTo(422);
      assertThat(isShownAgain.statusCode()).isEqualTo(413);
      assertThat(isShownAgain.body())
          .contains("too much text", "takes 293 KiB: shorten it", "256 KiB", "Nothing was saved")
          .contains("a".repeat(300_000) + "</textarea>", "value=\"kept\"");
      assertThat(isTooLarge.statusCode()).isEqualTo(413);
      assertThat(isTooLarge.headers().firstValue("Content-Security-Policy")).isPresent();
      assertThat(isTooLarge.body())
          .contains("That was too much text", "256 KiB", "Nothing was saved");
    }
  }

  @Test
  void a_failure_shows_a_number_and_no_detail_and_the_log_has_the_same_number() {
    PrintStream before = System.err;
    var log = new ByteArrayOutputStream();
    HttpResponse<String> answer;
    try (Clinic clinic = Clinic.withAdministrator()) {
      clinic.opened().close();
      System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
      answer = clinic.visitor().get("/sign-in");
    } finally {
      System.setErr(before);
    }

    assertThat(answer.statusCode()).isEqualTo(500);
    assertThat(answer.headers().firstValue("Content-Security-Policy")).isPresent();
    assertThat(answer.body())
        .contains("The program failed")
        .doesNotContain("Exception", "rungwise.store", ".java");
    String number = answer.body().replaceAll("(?s).*class=\"amount\">([0-9A-F]{8})<.*", "$1");
    assertThat(log.toString(StandardCharsets.UTF_8)).contains("Incident " + number);
  }
}
