package rungwise.checks.bytes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rungwise.app.clock.ClockSettings;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.RunningServer;
import rungwise.app.server.ServerSettings;
import rungwise.app.server.StoryClock;
import rungwise.app.server.TemporaryFolder;
import rungwise.app.server.WrongUse;
import rungwise.checks.bytes.WholeRecord.Change;
import rungwise.store.database.CannotOpenStore;

/**
 * The same with a server that is started on the changed files: a prescriber signs in and opens the
 * day's list, the protocols and every man. A page is as it would have been, or says what is wrong.
 */
final class RealStart {

  private static final DemoClinic.Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final int OK = 200;
  private static final int REFUSED = 400;
  private static final int FAILED = 500;
  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

  /** Words of the pages that tell; each is the program's own and stands in no other place. */
  private static final List<String> TELLS =
      List.of(
          "not as it was written",
          "cannot be read",
          "changed what had been saved",
          "Being computed: open the course to read it now",
          "Record changed",
          "record of the clinic is not");

  /** Pages that are asked for and not compared: they tell of sessions, looks and faults. */
  private static final List<String> ASKED = List.of("/changes", "/record-faults", "/account");

  /** Pages that are compared with what they were. */
  private static final List<String> COMPARED =
      List.of(
          "/",
          "/call",
          "/call/rescue",
          "/men",
          "/room",
          "/courses/new",
          "/clinic-vials",
          "/preparations",
          "/preparations/samples",
          "/syringes",
          "/dose",
          "/protocols",
          "/protocols/courses",
          "/populations",
          "/clock");

  /** What is compared of each man. */
  private static final List<String> OF_A_MAN =
      List.of(
          "",
          "/call",
          "/reach",
          "/running",
          "/order",
          "/forecast",
          "/injections",
          "/plan",
          "/record",
          "/report",
          "/visit",
          "/hand-over",
          "/screening",
          "/before-home",
          "/vial");

  private final WholeRecord record;
  private final List<String> paths;
  private final Map<String, String> written;
  private final List<String> unexplained = new ArrayList<>();

  RealStart(WholeRecord record) {
    this.record = record;
    this.paths =
        Stream.concat(
                record.written().courses().keySet().stream()
                    .flatMap(id -> OF_A_MAN.stream().map(page -> "/courses/" + id + page)),
                COMPARED.stream())
            .toList();
    this.written = pagesOfTheWhole();
  }

  private Map<String, String> pagesOfTheWhole() {
    try (TemporaryFolder folder = TemporaryFolder.make()) {
      record.write(folder.path());
      Map<String, String> once = pages(folder.path()).orElseThrow();
      record.write(folder.path());
      Map<String, String> again = pages(folder.path()).orElseThrow();
      List<String> differ =
          once.entrySet().stream()
              .filter(page -> !page.getValue().equals(again.get(page.getKey())))
              .map(Map.Entry::getKey)
              .toList();
      if (differ.isEmpty() && unexplained.isEmpty()) {
        return once;
      }
      throw new IllegalStateException(
          "what nobody changed is served in two ways " + differ + " or fails " + unexplained);
    }
  }

  /** What becomes of one change. */
  Outcome outcome(Change change, Path folder) {
    record.write(change, folder);
    Optional<Map<String, String>> pages;
    unexplained.clear();
    try {
      pages = pages(folder);
    } catch (WrongUse | CannotOpenStore told) {
      return Outcome.TOLD_AT_OPENING;
    } catch (RuntimeException wordless) {
      unexplained.add("the start: " + wordless);
      wordless.printStackTrace();
      pages = Optional.empty();
    }
    if (!unexplained.isEmpty()) {
      System.err.println(change + ": " + unexplained);
      return Outcome.WITHOUT_WORDS;
    }
    Map<String, String> served = pages.orElse(Map.of());
    if (!falseOnes(served).isEmpty()) {
      System.err.println(change + ": false " + falseOnes(served));
      return Outcome.SERVED_AS_TRUTH;
    }
    return served.equals(written) ? Outcome.UNCHANGED : Outcome.TOLD_AT_THE_LOOK;
  }

  /** Pages that are not as they would have been, and do not say so. */
  private List<String> falseOnes(Map<String, String> served) {
    return served.entrySet().stream()
        .filter(
            page -> !isTold(page.getValue()) && !page.getValue().equals(written.get(page.getKey())))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static boolean isTold(String page) {
    return TELLS.stream().anyMatch(page::contains);
  }

  /** The pages that are answered; empty if nobody is let in. */
  private Optional<Map<String, String>> pages(Path folder) {
    var clock = new StoryClock(InstantSource.fixed(WholeRecord.NOW));
    OpenClinic clinic = WholeRecord.open(folder, clock);
    ServerSettings settings =
        ServerSettings.of(
                ServerSettings.LOOPBACK, 0, Optional.empty(), "Northgate Clinic", ZoneOffset.UTC)
            .withClock(new ClockSettings.Given());
    try (RunningServer server = RunningServer.start(settings, clinic);
        HttpClient client = HttpClient.newBuilder().cookieHandler(new CookieManager()).build()) {
      return isLetIn(client, server.uri())
          ? Optional.of(pages(client, server.uri()))
          : Optional.empty();
    } catch (RuntimeException e) {
      clinic.close();
      throw e;
    }
  }

  private Map<String, String> pages(HttpClient client, URI server) {
    var pages = new TreeMap<String, String>();
    for (String path : ASKED) {
      answer(client, server, path);
    }
    for (String path : paths) {
      HttpResponse<String> answer = answer(client, server, path);
      if (answer.statusCode() == OK) {
        pages.put(path, TOKEN.matcher(answer.body()).replaceAll("name=\"_csrf\""));
      }
    }
    return pages;
  }

  /** An answer; a failure that no page explains is noted. */
  private HttpResponse<String> answer(HttpClient client, URI server, String path) {
    HttpResponse<String> answer = send(client, HttpRequest.newBuilder(server.resolve(path)));
    if (answer.statusCode() >= FAILED && !isTold(answer.body())) {
      unexplained.add(path + " " + answer.statusCode());
    }
    return answer;
  }

  private boolean isLetIn(HttpClient client, URI server) {
    URI door = server.resolve("/sign-in");
    Matcher token = TOKEN.matcher(answer(client, server, "/sign-in").body());
    if (!token.find()) {
      return false;
    }
    String form =
        "_csrf="
            + encoded(token.group(1))
            + "&signInName="
            + encoded(PRESCRIBER.signInName())
            + "&password="
            + encoded(PRESCRIBER.password());
    var sent =
        HttpRequest.newBuilder(door)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(form));
    HttpResponse<String> answer = send(client, sent);
    if (answer.statusCode() >= FAILED && !isTold(answer.body())) {
      unexplained.add("signing in " + answer.statusCode());
    }
    return answer.statusCode() < REFUSED;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static HttpResponse<String> send(HttpClient client, HttpRequest.Builder request) {
    try {
      return client.send(request.build(), BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
