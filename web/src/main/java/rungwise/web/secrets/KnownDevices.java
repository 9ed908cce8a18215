package rungwise.web.secrets;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.crypto.Mac;
import javax.crypto.SecretKey;

/**
 * Which browsers have signed in with which names, told by a signed cookie that each of them keeps,
 * so that it holds across restarts. The cookie proves nothing about who sits there: it only spares
 * its holder the waiting that strangers cause (OWASP, device cookies). It says a random number and
 * one seal for each name, and no name.
 */
public final class KnownDevices {

  private static final String NAME = "rungwise-device";
  private static final String PATH = "/";
  private static final Duration KEPT = Duration.ofDays(400);
  private static final String ALGORITHM = "HmacSHA256";
  private static final int NUMBER_BYTES = 16;
  private static final int SEAL_DIGITS = 32;
  private static final int MOST_NAMES = 8;
  private static final Pattern FORM =
      Pattern.compile("[0-9a-f]{32}(\\.[0-9a-f]{" + SEAL_DIGITS + "}){1," + MOST_NAMES + "}");

  private final SecretKey key;
  private final SecureRandom random = new SecureRandom();

  /**
   * Devices known by their cookies.
   *
   * @param key kept outside the database; another one makes every device unknown
   */
  public KnownDevices(SecretKey key) {
    this.key = key;
  }

  /** The browser's number, if it has signed in with this name before. */
  public Optional<String> find(HttpServletRequest request, String name) {
    return cookies(request).filter(parts -> isKnown(parts, name)).map(List::getFirst).findFirst();
  }

  /** Notes that this browser has signed in with a name; gives back its number. */
  public String remember(HttpServletRequest request, HttpServletResponse response, String name) {
    List<String> before = cookies(request).findFirst().orElseGet(() -> List.of(number()));
    String number = before.getFirst();
    String own = seal(number, name);
    var parts = new ArrayList<String>();
    parts.add(number);
    parts.add(own);
    before.stream()
        .skip(1)
        .filter(seal -> !seal.equals(own))
        .limit(MOST_NAMES - 1L)
        .forEach(parts::add);
    response.addCookie(cookie(request, String.join(".", parts)));
    return number;
  }

  private boolean isKnown(List<String> parts, String name) {
    byte[] own = seal(parts.getFirst(), name).getBytes(StandardCharsets.US_ASCII);
    return parts.stream()
        .skip(1)
        .anyMatch(seal -> MessageDigest.isEqual(seal.getBytes(StandardCharsets.US_ASCII), own));
  }

  /** One from an earlier version has a narrower path, and is sent beside the one of now. */
  private static Stream<List<String>> cookies(HttpServletRequest request) {
    return Optional.ofNullable(request.getCookies()).stream()
        .flatMap(Stream::of)
        .filter(cookie -> cookie.getName().equals(NAME))
        .map(Cookie::getValue)
        .filter(value -> FORM.matcher(value).matches())
        .map(value -> Arrays.asList(value.split("\\.", -1)));
  }

  private static Cookie cookie(HttpServletRequest request, String value) {
    var cookie = new Cookie(NAME, value);
    cookie.setHttpOnly(true);
    cookie.setSecure(request.isSecure());
    cookie.setPath(PATH);
    cookie.setMaxAge(Math.toIntExact(KEPT.toSeconds()));
    cookie.setAttribute("SameSite", "Strict");
    return cookie;
  }

  private String number() {
    var bytes = new byte[NUMBER_BYTES];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private String seal(String number, String name) {
    try {
      var mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      byte[] seal = mac.doFinal((number + " " + name).getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(seal).substring(0, SEAL_DIGITS);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("bug: every Java has " + ALGORITHM, e);
    }
  }
}
