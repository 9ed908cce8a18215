package rungwise.app.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * A steady attack on one name, from 1,000 addresses of this machine (all of 127.0.0.0/8 is its own
 * on Linux), 50 tries in each second of the clinic's clock.
 */
class LockOutTest {

  private static final int ADDRESSES = 1000;
  private static final int TRIES_IN_A_SECOND = 50;
  private static final int SECONDS = 40;
  private static final int MOST_TAKEN = 100;
  private static final DemoClinic.Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final String NEW_PASSWORD = "wide-kettle-moss-orchard";
  private static final Pattern CODE = Pattern.compile("<p class=\"code\">([^<]+)</p>");

  private final Clinic clinic = Clinic.withEverybody();
  private int next;
  private int taken;

  @AfterEach
  void close() {
    clinic.close();
  }

  private void attack(int seconds) throws IOException {
    Visitor page = clinic.visitor();
    String token = Visitor.token(page.get("/sign-in").body());
    for (int tries = 0; tries < seconds * TRIES_IN_A_SECOND; tries++) {
      taken += statusOf(page.sessionId(), token) == 422 ? 1 : 0;
      if (tries % TRIES_IN_A_SECOND == 0) {
        clinic.clock().moveOn(Duration.ofSeconds(1));
      }
    }
  }

  /** What one wrong password from the next address is answered with. */
  private int statusOf(String session, String token) throws IOException {
    int host = next++ % ADDRESSES;
    byte[] from = {127, 1, (byte) (host / 250), (byte) (1 + host % 250)};
    String body = "signInName=" + NURSE.signInName() + "&password=wrong&_csrf=" + token;
    try (var socket =
        new Socket(
            InetAddress.getLoopbackAddress(),
            clinic.uri().getPort(),
            InetAddress.getByAddress(from),
            0)) {
      socket
          .getOutputStream()
          .write(
              ("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                      + "Cookie: rungwise="
                      + session
                      + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                      + body.length()
                      + "\r\n\r\n"
                      + body)
                  .getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
      return Integer.parseInt(answer.substring("HTTP/1.1 ".length(), "HTTP/1.1 200".length()));
    }
  }

  private HttpResponse<String> signIn(Visitor visitor, String password) {
    return visitor.signIn(NURSE.signInName(), password);
  }

  @Test
  void under_a_steady_attack_its_owner_gets_in_at_her_desk_and_elsewhere_by_a_code()
      throws IOException {
    Visitor desk = clinic.signedIn(NURSE);
    desk.post("/", "/sign-out", Map.of());
    Visitor administrator = clinic.signedIn(Clinic.ADMINISTRATOR);
    String page =
        "/people/"
            + clinic.opened().people().list().stream()
                .filter(one -> one.signInName().text().equals(NURSE.signInName()))
                .findFirst()
                .orElseThrow()
                .id();

    attack(SECONDS);
    assertThat(signIn(clinic.visitor(), NURSE.password()).statusCode()).isEqualTo(429);
    assertThat(signIn(desk, NURSE.password()).statusCode()).isEqualTo(303);
    assertThat(taken).isBetween(1, MOST_TAKEN);

    String shown = Visitor.location(administrator.post(page, page + "/new-code", Map.of()));
    Matcher code = CODE.matcher(administrator.get(shown).body());
    assertThat(code.find()).isTrue();
    attack(SECONDS);
    Visitor elsewhere = clinic.visitor();
    HttpResponse<String> set =
        elsewhere.fill(
            "/welcome",
            Map.of(
                "code", code.group(1),
                "signInName", NURSE.signInName(),
                "password", NEW_PASSWORD));
    assertThat(set.statusCode()).isEqualTo(303);
    attack(1);
    assertThat(signIn(elsewhere, NEW_PASSWORD).statusCode()).isEqualTo(303);
    assertThat(signIn(clinic.visitor(), NEW_PASSWORD).statusCode()).isEqualTo(429);
  }
}
