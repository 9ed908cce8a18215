package rungwise.clinic.words;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The short hash of a sheet: 60 bits of SHA-256 over all that the sheet says, with its id, which
 * nobody can guess.
 *
 * @param text 12 letters and digits without 0, 1, I and O
 */
public record SheetCode(String text) {

  private static final String SIGNS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
  private static final int LENGTH = 12;
  private static final int GROUP = 4;
  private static final Pattern BETWEEN = Pattern.compile("[\\s-]+");
  private static final Pattern CODE = Pattern.compile("[" + SIGNS + "]{" + LENGTH + "}");

  public SheetCode {
    if (!CODE.matcher(text).matches()) {
      throw new IllegalArgumentException("bug: no code of a sheet: " + text);
    }
  }

  /** The code of what a sheet says. */
  static SheetCode of(String said) {
    byte[] hash = sha256(said);
    var text = new StringBuilder();
    for (int at = 0; at < LENGTH; at++) {
      text.append(SIGNS.charAt((hash[at] & 0xFF) % SIGNS.length()));
    }
    return new SheetCode(text.toString());
  }

  /** A code as somebody typed it; empty if it is none. */
  public static Optional<SheetCode> read(String typed) {
    String text = BETWEEN.matcher(typed).replaceAll("").toUpperCase(Locale.ROOT);
    return CODE.matcher(text).matches() ? Optional.of(new SheetCode(text)) : Optional.empty();
  }

  /** In groups, as it is printed: "K7M2 4PQR 9XYZ". */
  public String words() {
    return text.substring(0, GROUP)
        + " "
        + text.substring(GROUP, 2 * GROUP)
        + " "
        + text.substring(2 * GROUP);
  }

  private static byte[] sha256(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("bug: every Java has SHA-256", e);
    }
  }
}
