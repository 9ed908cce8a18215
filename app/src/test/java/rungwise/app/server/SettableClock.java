package rungwise.app.server;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that stands still until it is moved on. */
final class SettableClock implements InstantSource {

  private volatile Instant now = Instant.parse("2026-03-02T08:00:00Z");

  synchronized void moveOn(Duration time) {
    now = now.plus(time);
  }

  @Override
  public Instant instant() {
    return now;
  }
}
