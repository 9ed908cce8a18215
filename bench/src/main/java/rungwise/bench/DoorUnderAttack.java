package rungwise.bench;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.TemporaryFolder;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.OneTimeCode;

/**
 * A steady attack on one name from 1,000 addresses of this machine (all of 127.0.0.0/8 is its own
 * on Linux), 50 wrong passwords a second, with the real cost of a password, while its owner signs
 * in: again and again at her desk, and at a new device by her passkey and by a code that an
 * administrator gives. Prints how long each took; 1 if one took longer than is promised.
 */
public final class DoorUnderAttack {

  private static final int ADDRESSES = 1000;
  private static final int TRIES_IN_A_SECOND = 50;
  private static final int LAST_OF_AN_ADDRESS = 250;
  private static final int AT_THE_DESK = 20;
  private static final int BETWEEN_SECONDS = 2;
  private static final Duration AT_HER_DESK = Duration.ofSeconds(2);
  private static final String ACCOUNT = "/account";
  private static final Duration ELSEWHERE = Duration.ofMinutes(1);
  private static final DemoClinic.Member OWNER = DemoClinic.MEMBERS.get(2);
  private static final String NEW_PASSWORD = "wide-kettle-moss-orchard";
  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");
  private static final Pattern SESSION = Pattern.compile("(?m)^Set-Cookie: rungwise=([^;\\s]+)");

  private final URI server;
  private final Map<String, Integer> answers = new TreeMap<>();
  private int next;

  private DoorUnderAttack(URI server) {
    this.server = server;
  }

  /** No arguments. */
  public static void main(String[] args) throws Exception {
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      OpenClinic clinic = OpenClinic.in(folder.path(), InstantSource.system());
      DemoClinic.fillPeople(clinic.people());
      ServerSettings settings =
          ServerSettings.of(
                  ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC)
              .withClock(new ClockSettings.Given());
      boolean isKept;
      try (RunningServer running = RunningServer.start(settings, clinic)) {
        isKept = new DoorUnderAttack(running.uri()).isKept(clinic);
      }
      System.exit(isKept ? 0 : 1);
    }
  }

  private boolean isKept(OpenClinic clinic) throws Exception {
    var desk = new Visitor(server);
    signIn(desk, OWNER.password());
    SoftPasskey passkey = newPasskey();
    try (var strangers = Executors.newScheduledThreadPool(1);
        var tries = Executors.newVirtualThreadPerTaskExecutor()) {
      String page = get("/sign-in");
      String session = found(SESSION, page);
      String token = found(TOKEN, page);
      ScheduledFuture<?> attack =
          strangers.scheduleAtFixedRate(
              () -> tries.execute(() -> tryOnce(session, token)),
              0,
              TimeUnit.SECONDS.toNanos(1) / TRIES_IN_A_SECOND,
              TimeUnit.NANOSECONDS);
      var took = new ArrayList<Long>();
      for (int one = 0; one < AT_THE_DESK; one++) {
        TimeUnit.SECONDS.sleep(BETWEEN_SECONDS);
        desk.send(desk.fill("/", "/sign-out", Map.of()));
        took.add(signIn(desk, OWNER.password()));
      }
      long byPasskey = byPasskey(passkey);
      long byCode = byCode(clinic);
      attack.cancel(/* mayInterruptIfRunning= */ false);
      strangers.shutdownNow();
      tries.shutdown();
      took.sort(Comparator.naturalOrder());
      return told(took, byPasskey, byCode);
    }
  }

  private boolean told(List<Long> took, long byPasskey, long byCode) {
    long slowest = took.getLast();
    synchronized (answers) {
      System.out.printf(
          Locale.ROOT,
          "tries of strangers by their answers: %s%n"
              + "at her desk: %d times, half within %d ms, the slowest in %d ms (promised: %d ms)%n"
              + "at a new device by her passkey: in %d ms, by a code: in %d ms (promised: %d ms)%n",
          answers,
          AT_THE_DESK,
          took.get(AT_THE_DESK / 2),
          slowest,
          AT_HER_DESK.toMillis(),
          byPasskey,
          byCode,
          ELSEWHERE.toMillis());
    }
    return slowest <= AT_HER_DESK.toMillis() && Math.max(byPasskey, byCode) <= ELSEWHERE.toMillis();
  }

  /** How many milliseconds it took. */
  private static long signIn(Visitor visitor, String password) {
    long begun = System.nanoTime();
    visitor.send("/sign-in", Map.of("signInName", OWNER.signInName(), "password", password));
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
  }

  /** Passkeys need a site with a name. */
  private URI named() {
    return URI.create("http://localhost:" + server.getPort() + "/");
  }

  /** Added by its owner before anybody attacks, in a browser that she does not use again. */
  private SoftPasskey newPasskey() throws GeneralSecurityException {
    var passkey = new SoftPasskey(named());
    var owner = new Visitor(named());
    signIn(owner, OWNER.password());
    String question = owner.ask(owner.fill(ACCOUNT, "/account/passkeys/questions", Map.of()));
    String answer = passkey.made(question);
    owner.send(
        owner.fill(
            ACCOUNT, "/account/passkeys", Map.of("answer", answer, "passkeyName", "a telephone")));
    return passkey;
  }

  /** From the moment in which she opens the page until she reads her own. */
  private long byPasskey(SoftPasskey passkey) throws GeneralSecurityException {
    long begun = System.nanoTime();
    var elsewhere = new Visitor(named());
    String question =
        elsewhere.ask(elsewhere.fill("/sign-in", "/sign-in/passkey/questions", Map.of()));
    String answer = passkey.used(question);
    elsewhere.send(elsewhere.fill("/sign-in", "/sign-in/passkey", Map.of("passkeyAnswer", answer)));
    if (!elsewhere.read(ACCOUNT).contains(OWNER.fullName())) {
      throw new IllegalStateException("bug: the passkey did not let her in");
    }
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
  }

  /** From the moment in which an administrator gives the code until she is in. */
  private long byCode(OpenClinic clinic) {
    var people = clinic.people();
    var admin = idOf(clinic, DemoClinic.MEMBERS.getFirst());
    long begun = System.nanoTime();
    OneTimeCode code = people.newCode(admin, idOf(clinic, OWNER)).orThrow().code();
    var elsewhere = new Visitor(server);
    elsewhere.send(
        "/welcome",
        Map.of("code", code.text(), "signInName", OWNER.signInName(), "password", NEW_PASSWORD));
    signIn(elsewhere, NEW_PASSWORD);
    return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begun);
  }

  private static AccountId idOf(OpenClinic clinic, DemoClinic.Member member) {
    return clinic.people().list().stream()
        .filter(one -> one.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow()
        .id();
  }

  private void tryOnce(String session, String token) {
    String body =
        "signInName="
            + OWNER.signInName()
            + "&password=wrong&_csrf="
            + URLEncoder.encode(token, StandardCharsets.UTF_8);
    String answer;
    try {
      answer = status(request("POST /sign-in", session, body));
    } catch (IOException broken) {
      answer = "no answer";
    }
    synchronized (answers) {
      answers.merge(answer, 1, Integer::sum);
    }
  }

  private String get(String path) throws IOException {
    return request("GET " + path, "", "");
  }

  private static String status(String answer) {
    return answer.length() < 12 ? "no answer" : answer.substring(9, 12);
  }

  private static String found(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    if (matcher.find()) {
      return matcher.group(1);
    }
    throw new IllegalStateException("bug: no " + pattern);
  }

  private synchronized int nextHost() {
    return next++ % ADDRESSES;
  }

  private String request(String line, String session, String body) throws IOException {
    int host = nextHost();
    byte[] from = {
      127, 1, (byte) (host / LAST_OF_AN_ADDRESS), (byte) (1 + host % LAST_OF_AN_ADDRESS)
    };
    try (var socket =
        new Socket(
            InetAddress.getLoopbackAddress(),
            server.getPort(),
            InetAddress.getByAddress(from),
            0)) {
      String head =
          line
              + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nCookie: rungwise="
              + session
              + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
              + body.length()
              + "\r\n\r\n";
      socket.getOutputStream().write((head + body).getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
