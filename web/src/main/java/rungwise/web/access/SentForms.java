package rungwise.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.web.servlet.FlashMap;
import org.springframework.web.util.WebUtils;

/**
 * The forms that a session has sent and that were accepted, with what was answered. A form is known
 * by a digest of its address and all its fields; the masked proof of origin among them is another
 * one on each page, so that only the very same form of the very same page is known again.
 */
final class SentForms {

  private static final String IN_SESSION = SentForms.class.getName();
  private static final int MOST = 32;

  private final Map<String, Answer> answers = new LinkedHashMap<>();

  /**
   * What an accepted form was answered with.
   *
   * @param location where it leads
   * @param carried what the page there is told
   */
  record Answer(String location, FlashMap carried) {}

  /** Those of a session. */
  static SentForms of(HttpSession session) {
    synchronized (WebUtils.getSessionMutex(session)) {
      if (session.getAttribute(IN_SESSION) instanceof SentForms known) {
        return known;
      }
      var none = new SentForms();
      session.setAttribute(IN_SESSION, none);
      return none;
    }
  }

  Optional<Answer> answerTo(String form) {
    return Optional.ofNullable(answers.get(form));
  }

  /** Keeps an answer, and forgets the oldest beyond a number of them. */
  void keep(String form, Answer answer) {
    answers.put(form, answer);
    if (answers.size() > MOST) {
      answers.remove(answers.keySet().iterator().next());
    }
  }

  /** What a form is known by. */
  static String digest(HttpServletRequest request) {
    return digest(request.getRequestURI(), request.getParameterMap());
  }

  static String digest(String path, Map<String, String[]> fields) {
    MessageDigest digest = sha256();
    add(digest, path);
    new TreeMap<>(fields)
        .forEach(
            (name, values) -> {
              add(digest, name);
              Arrays.stream(values).forEach(value -> add(digest, "=" + value));
            });
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The length goes first, so that no two lists of texts read alike. */
  private static void add(MessageDigest digest, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
    digest.update(bytes);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
