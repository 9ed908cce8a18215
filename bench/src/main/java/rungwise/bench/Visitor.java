package rungwise.bench;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Somebody at a browser, without the browser: reads pages and sends the forms on them. */
final class Visitor {

  private static final Pattern INPUT = Pattern.compile("<input\\b[^>]*>");
  private static final Pattern ALERT =
      Pattern.compile("role=\"alert\"[^>]*>(.*?)</ul>", Pattern.DOTALL);
  private static final Pattern TYPE = Pattern.compile("\\btype=\"(radio|checkbox)\"");
  private static final Pattern NAME = Pattern.compile("\\bname=\"([^\"]*)\"");
  private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");
  private static final int REDIRECTED = 303;
  private static final int FOUND = 302;
  private static final int OK = 200;
  private static final int FAILED = 500;

  private final HttpClient client =
      HttpClient.newBuilder()
          .cookieHandler(new CookieManager())
          .version(HttpClient.Version.HTTP_1_1)
          .build();
  private final URI site;

  Visitor(URI site) {
    this.site = site;
  }

  /**
   * The text of a page.
   *
   * @throws IllegalStateException if the answer is not 200
   */
  String read(String path) {
    HttpResponse<String> answer = send(HttpRequest.newBuilder(site.resolve(path)).build());
    if (answer.statusCode() == OK) {
      return answer.body();
    }
    throw new IllegalStateException("bug: " + path + " answered " + answer.statusCode());
  }

  /** A form as it is sent. */
  record Form(String action, Map<String, String> fields) {}

  /** The form of a page, with what stands in its fields and what is typed over it. */
  Form fill(String path, String action, Map<String, String> typed) {
    Map<String, String> fields = new HashMap<>(fields(read(path)));
    fields.putAll(typed);
    return new Form(action, fields);
  }

  /**
   * Reads a page and sends its form to its own address.
   *
   * @throws IllegalStateException if the form is not taken
   */
  void send(String path, Map<String, String> typed) {
    send(fill(path, path, typed));
  }

  /**
   * Sends a form and gives the answer where it shows one.
   *
   * @throws IllegalStateException if the form is not taken
   */
  void send(Form form) {
    HttpResponse<String> answer = answer(form);
    if (answer.statusCode() != REDIRECTED && answer.statusCode() != FOUND) {
      throw new IllegalStateException(
          "bug: the form of " + form.action() + " was refused: " + faults(answer.body()));
    }
  }

  /**
   * Whether a form is answered by a page, or taken.
   *
   * @throws IllegalStateException if it fails
   */
  boolean isTaken(Form form) {
    int status = answer(form).statusCode();
    if (status >= FAILED) {
      throw new IllegalStateException("bug: the form of " + form.action() + " failed: " + status);
    }
    return status == OK || status == REDIRECTED || status == FOUND;
  }

  /**
   * What a form is answered with, such as the question for a passkey.
   *
   * @throws IllegalStateException if it is not answered by a page
   */
  String ask(Form form) {
    HttpResponse<String> answer = answer(form);
    if (answer.statusCode() != OK) {
      throw new IllegalStateException("bug: " + form.action() + " answered " + answer.statusCode());
    }
    return answer.body();
  }

  private HttpResponse<String> answer(Form form) {
    String body =
        form.fields().entrySet().stream()
            .map(field -> field.getKey() + "=" + encoded(field.getValue()))
            .collect(Collectors.joining("&"));
    return send(
        HttpRequest.newBuilder(site.resolve(form.action()))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  private static String faults(String page) {
    Matcher alert = ALERT.matcher(page);
    return alert.find() ? alert.group(1) : "no reason on the page";
  }

  private static Map<String, String> fields(String page) {
    Map<String, String> fields = new HashMap<>();
    Matcher inputs = INPUT.matcher(page);
    while (inputs.find()) {
      String input = inputs.group();
      Matcher name = NAME.matcher(input);
      Matcher value = VALUE.matcher(input);
      if (name.find() && !TYPE.matcher(input).find()) {
        fields.put(name.group(1), value.find() ? value.group(1) : "");
      }
    }
    return fields;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private HttpResponse<String> send(HttpRequest request) {
    try {
      return client.send(request, BodyHandlers.ofString());
    } catch (IOException failure) {
      throw new IllegalStateException("bug: no answer", failure);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("bug: stopped", stopped);
    }
  }
}
