package rungwise.web.session;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.people.AccountId;
import rungwise.web.secrets.SteadyTime;

/**
 * Who has given a second proof in this shift, in which browser. It outlives a session that ended by
 * itself, so that it is asked once a shift; it ends with signing out. In memory only: after a
 * restart it is asked again.
 */
public final class Shifts {

  private static final String NAME = "rungwise-shift";
  private static final String NAME_UNDER_TLS = "__Host-" + NAME;
  private static final int BYTES = 32;

  private record Given(AccountId account, long at) {}

  private final Duration shift;
  private final SteadyTime steady;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Given> given = new ConcurrentHashMap<>();

  public Shifts(FactorRule rule, SteadyTime steady) {
    this.shift = rule.shift();
    this.steady = steady;
  }

  /** Notes that the account has given a second proof in this browser now. */
  public void note(HttpServletRequest request, HttpServletResponse response, AccountId account) {
    end(request);
    given.values().removeIf(one -> !isGood(one));
    var secret = new byte[BYTES];
    random.nextBytes(secret);
    String token = Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
    given.put(digest(token), new Given(account, steady.nanos()));
    response.addCookie(cookie(request, token, Math.toIntExact(shift.toSeconds())));
  }

  /** Whether the account has given one in this browser, in this shift. */
  public boolean isGiven(HttpServletRequest request, AccountId account) {
    return tokens(request)
        .map(token -> given.get(digest(token)))
        .anyMatch(one -> one != null && one.account().equals(account) && isGood(one));
  }

  private boolean isGood(Given one) {
    return steady.since(one.at()).compareTo(shift) < 0;
  }

  /** Ends what was given in this browser. */
  public void end(HttpServletRequest request) {
    tokens(request).map(Shifts::digest).forEach(given::remove);
  }

  /** Ends what an account has given in every browser. */
  public void endAllOf(AccountId account) {
    given.values().removeIf(one -> one.account().equals(account));
  }

  private static Stream<String> tokens(HttpServletRequest request) {
    return Optional.ofNullable(request.getCookies()).stream()
        .flatMap(Arrays::stream)
        .filter(cookie -> cookie.getName().equals(nameFor(request)))
        .map(Cookie::getValue);
  }

  private static String nameFor(HttpServletRequest request) {
    return request.isSecure() ? NAME_UNDER_TLS : NAME;
  }

  private static Cookie cookie(HttpServletRequest request, String token, int seconds) {
    var cookie = new Cookie(nameFor(request), token);
    cookie.setHttpOnly(true);
    cookie.setSecure(request.isSecure());
    cookie.setPath("/");
    cookie.setMaxAge(seconds);
    cookie.setAttribute("SameSite", "Strict");
    return cookie;
  }

  private static String digest(String token) {
    try {
      byte[] bytes =
          MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("bug: every Java has SHA-256", e);
    }
  }
}
