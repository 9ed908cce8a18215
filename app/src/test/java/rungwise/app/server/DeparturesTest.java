package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import rungwise.clinic.audit.TrailSearch;

/** Browsers that leave while the server is at work: the clinic's clock is held meanwhile. */
class DeparturesTest {

  private static final Clinic CLINIC = Clinic.withDemoStory();
  private static final String GONE = "Whoever had asked is gone";

  @AfterAll
  static void close() {
    CLINIC.close();
  }

  private final Visitor prescriber = CLINIC.signedIn(DemoClinic.MEMBERS.get(1));
  private final String course =
      "/courses/" + CLINIC.opened().coursesOf("HL-1017").getFirst().id().text();

  private static long entries() {
    return CLINIC.opened().trail().find(TrailSearch.ALL, Long.MAX_VALUE, 1).getFirst().number();
  }

  private Socket ask(String line, String body) throws IOException {
    var socket = new Socket(InetAddress.getLoopbackAddress(), CLINIC.uri().getPort());
    socket
        .getOutputStream()
        .write(
            (line
                    + " HTTP/1.1\r\nHost: localhost\r\nCookie: rungwise="
                    + prescriber.sessionId()
                    + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                    + body.length()
                    + "\r\n\r\n"
                    + body)
                .getBytes(StandardCharsets.US_ASCII));
    return socket;
  }

  private static void await(BooleanSupplier isSo) throws InterruptedException {
    for (int waited = 0; waited < 200 && !isSo.getAsBoolean(); waited++) {
      Thread.sleep(50);
    }
    assertThat(isSo.getAsBoolean()).isTrue();
  }

  /** What the log says while somebody asks, leaves, and the clock goes on only then. */
  private String logOf(String line, String body, BooleanSupplier isOver) throws Exception {
    PrintStream before = System.err;
    var log = new ByteArrayOutputStream();
    System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
    try {
      CLINIC.clock().hold();
      ask(line, body).close();
      CLINIC.clock().letGo();
      await(() -> log.toString(StandardCharsets.UTF_8).contains(GONE) || isOver.getAsBoolean());
    } finally {
      CLINIC.clock().letGo();
      System.setErr(before);
    }
    return log.toString(StandardCharsets.UTF_8);
  }

  @Test
  void a_page_is_not_worked_out_for_who_has_left_and_counts_as_seen_by_nobody() throws Exception {
    for (String page : List.of(course, course + "/forecast", "/")) {
      prescriber.get(page);
      long before = entries();

      assertThat(logOf("GET " + page, "", () -> entries() > before)).as(page).contains(GONE);
      assertThat(entries()).as(page).isEqualTo(before);
      assertThat(prescriber.get(page).statusCode()).as(page).isEqualTo(200);
    }
  }

  @Test
  void a_form_is_taken_from_who_has_left() throws Exception {
    String token = Visitor.token(prescriber.get("/account").body());

    logOf("POST /sign-out", "_csrf=" + token, () -> prescriber.get("/").statusCode() == 302);

    assertThat(prescriber.get("/").statusCode()).isEqualTo(302);
  }

  @Test
  void who_asks_for_the_next_page_before_this_one_has_come_gets_both() throws Exception {
    CLINIC.clock().hold();
    try (Socket socket = ask("GET " + course, "")) {
      socket
          .getOutputStream()
          .write(
              "GET /call HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      CLINIC.clock().letGo();
      String both = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

      assertThat(both.split("HTTP/1\\.1 200", -1)).hasSize(3);
    } finally {
      CLINIC.clock().letGo();
    }
  }
}
