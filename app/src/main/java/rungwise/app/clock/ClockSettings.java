package rungwise.app.clock;

import java.net.URI;
import java.util.Optional;

/** How the clock of a server is judged. */
public sealed interface ClockSettings {

  /**
   * It is compared with whatever can be had.
   *
   * @param timeSource a web address of which an answer says what time it is
   */
  record Watched(Optional<URI> timeSource) implements ClockSettings {}

  /** It is given and not doubted: a test's, or of a program that answers nobody. */
  record Given() implements ClockSettings {}
}
