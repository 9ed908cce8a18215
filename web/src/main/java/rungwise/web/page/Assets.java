package rungwise.web.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The style sheet and the fonts, read once. The style sheet's address changes with its text, so
 * that browsers may keep all of them and never show an old one.
 */
public final class Assets {

  private static final String STYLESHEET = "rungwise.css";
  private static final String PASSKEY_SCRIPT = "passkey.js";
  private static final String CLOCK_SCRIPT = "clock.js";
  private static final String CALL_SCRIPT = "call.js";
  private static final String RESCUE_SCRIPT = "rescue.js";
  private static final String REFRESH_SCRIPT = "refresh.js";
  private static final String PAPER_SCRIPT = "paper.js";
  private static final int DIGITS_OF_VERSION = 12;

  /**
   * One file.
   *
   * @param type its media type
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared, never changed
  public record Asset(String name, String type, byte[] bytes) {}

  private final Map<String, Asset> assets;
  private final String stylesheet;

  public Assets() {
    assets =
        Stream.of(
                read(STYLESHEET, "text/css;charset=UTF-8"),
                read("atkinson-hyperlegible-next-400.woff2", "font/woff2"),
                read("atkinson-hyperlegible-next-700.woff2", "font/woff2"),
                read("icon.svg", "image/svg+xml"),
                read(CALL_SCRIPT, "text/javascript;charset=UTF-8"),
                read(CLOCK_SCRIPT, "text/javascript;charset=UTF-8"),
                read(PASSKEY_SCRIPT, "text/javascript;charset=UTF-8"),
                read(RESCUE_SCRIPT, "text/javascript;charset=UTF-8"),
                read(REFRESH_SCRIPT, "text/javascript;charset=UTF-8"),
                read(PAPER_SCRIPT, "text/javascript;charset=UTF-8"))
            .collect(Collectors.toUnmodifiableMap(Asset::name, Function.identity()));
    stylesheet = addressOf(STYLESHEET);
  }

  private String addressOf(String name) {
    return "/assets/" + name + "?v=" + versionOf(asset(name).orElseThrow());
  }

  /** Address of the script that asks the browser for a passkey. */
  public String passkeyScript() {
    return addressOf(PASSKEY_SCRIPT);
  }

  /** Address of the script that sends what the browser's clock says. */
  public String clockScript() {
    return addressOf(CLOCK_SCRIPT);
  }

  /** Address of the script that counts how long an erection lasts. */
  public String callScript() {
    return addressOf(CALL_SCRIPT);
  }

  /** Address of the script that keeps the log of a rescue in the page. */
  public String rescueScript() {
    return addressOf(RESCUE_SCRIPT);
  }

  /** Address of the script that shows a list anew when it has changed. */
  public String refreshScript() {
    return addressOf(REFRESH_SCRIPT);
  }

  /** Address of the script that prints a page that was asked for on paper. */
  public String paperScript() {
    return addressOf(PAPER_SCRIPT);
  }

  public Optional<Asset> asset(String name) {
    return Optional.ofNullable(assets.get(name));
  }

  /** Address of the style sheet. */
  public String stylesheet() {
    return stylesheet;
  }

  private static Asset read(String name, String type) {
    try (InputStream in = Assets.class.getResourceAsStream("/rungwise/web/assets/" + name)) {
      if (in == null) {
        throw new IllegalStateException("bug: the file " + name + " is missing in the program");
      }
      return new Asset(name, type, in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String versionOf(Asset asset) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(asset.bytes());
      return HexFormat.of().formatHex(digest).substring(0, DIGITS_OF_VERSION);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
