package rungwise.web.session;

import java.time.Duration;

/**
 * How long a person stays signed in.
 *
 * @param idle longest time between two requests
 * @param whole longest time since signing in, however busy
 */
public record SessionLimits(Duration idle, Duration whole) {

  private static final int USUAL_IDLE_MINUTES = 15;
  private static final int USUAL_WHOLE_HOURS = 12;

  /** 15 minutes without a request, 12 hours in all: a shared desk, one long shift. */
  public static final SessionLimits USUAL =
      new SessionLimits(
          Duration.ofMinutes(USUAL_IDLE_MINUTES), Duration.ofHours(USUAL_WHOLE_HOURS));

  public SessionLimits {
    if (!idle.isPositive() || !whole.isPositive()) {
      throw new IllegalArgumentException("bug: a session that ends before it starts");
    }
  }
}
