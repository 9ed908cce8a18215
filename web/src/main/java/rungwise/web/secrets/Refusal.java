package rungwise.web.secrets;

import java.time.Duration;

/**
 * A try of a secret too many.
 *
 * @param delay for how long to wait, where waiting is enough
 */
public record Refusal(Because because, Duration delay) {

  private static final Duration ASK_AGAIN = Duration.ofHours(1);

  /** Why a try is refused. */
  public enum Because {
    /** Waiting is enough. */
    TOO_OFTEN,
    /** No password is taken any more from a device that is not known. */
    UNKNOWN_DEVICE
  }

  static Refusal tooOften(Duration delay) {
    return new Refusal(Because.TOO_OFTEN, delay);
  }

  /** What a person is told. */
  public String words() {
    return switch (because) {
      case TOO_OFTEN ->
          "There were too many tries. Wait %s seconds, then try again.".formatted(seconds());
      case UNKNOWN_DEVICE ->
          "There were too many wrong passwords for this name, so none is taken here now. Sign in on"
              + " a device that you have used before, or with a passkey, or ask an administrator"
              + " for a code for a new password.";
    };
  }

  /** The whole seconds to wait, for the Retry-After header. */
  public String seconds() {
    Duration shown = because == Because.TOO_OFTEN ? delay : ASK_AGAIN;
    return Long.toString(shown.toSeconds() + 1);
  }
}
