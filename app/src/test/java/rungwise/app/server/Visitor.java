package rungwise.app.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Somebody with a browser of his own: keeps cookies, follows no redirect by itself. */
public final class Visitor {

  private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

  private final URI server;
  private final CookieManager cookies = new CookieManager();
  private final HttpClient client = HttpClient.newBuilder().cookieHandler(cookies).build();

  public Visitor(URI server) {
    this.server = server;
  }

  public HttpResponse<String> get(String path) {
    return send(HttpRequest.newBuilder(server.resolve(path)).GET());
  }

  public HttpResponse<String> ask(String method, String path) {
    return send(
        HttpRequest.newBuilder(server.resolve(path)).method(method, BodyPublishers.noBody()));
  }

  /** Opens a page with a form and sends it filled, as a person does. */
  public HttpResponse<String> fill(String page, Map<String, String> fields) {
    return post(page, page, fields);
  }

  /** Sends fields to a path, with the proof from a form of a page. */
  public HttpResponse<String> post(String page, String path, Map<String, String> fields) {
    var all = new LinkedHashMap<>(fields);
    all.put("_csrf", token(get(page).body()));
    return postRaw(path, all);
  }

  /** The same with fields that may be there several times. */
  public HttpResponse<String> postAll(
      String page, String path, List<Map.Entry<String, String>> fields) {
    return postRaw(
        path,
        Stream.concat(fields.stream(), Stream.of(Map.entry("_csrf", token(get(page).body())))));
  }

  /** Sends fields to a path as they are. */
  public HttpResponse<String> postRaw(String path, Map<String, String> fields) {
    return postRaw(path, fields.entrySet().stream());
  }

  /** The same with fields that may be there several times. */
  public HttpResponse<String> postAllRaw(String path, List<Map.Entry<String, String>> fields) {
    return postRaw(path, fields.stream());
  }

  private HttpResponse<String> postRaw(String path, Stream<Map.Entry<String, String>> fields) {
    String body =
        fields
            .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
            .collect(Collectors.joining("&"));
    return send(
        HttpRequest.newBuilder(server.resolve(path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body)));
  }

  public HttpResponse<String> signIn(String name, String password) {
    return fill("/sign-in", Map.of("signInName", name, "password", password));
  }

  public String sessionId() {
    return cookie("rungwise");
  }

  /** The value of a cookie that the server has set. */
  public String cookie(String name) {
    return cookies.getCookieStore().getCookies().stream()
        .filter(cookie -> cookie.getName().equals(name))
        .map(HttpCookie::getValue)
        .findFirst()
        .orElseThrow();
  }

  /** Keeps a cookie as if the server had set it. */
  void keep(String name, String value) {
    var cookie = new HttpCookie(name, value);
    cookie.setPath("/");
    cookie.setVersion(0);
    cookies.getCookieStore().add(server, cookie);
  }

  public static String token(String page) {
    var matcher = TOKEN.matcher(page);
    if (matcher.find()) {
      return matcher.group(1);
    }
    throw new AssertionError("no form in " + page);
  }

  public static String location(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElse("nowhere");
  }

  private static String encode(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return client.send(request.build(), BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
