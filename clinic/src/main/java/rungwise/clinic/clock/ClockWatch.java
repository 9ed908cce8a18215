package rungwise.clinic.clock;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Stream;
import rungwise.clinic.clock.ClockBelief.Confirmed;
import rungwise.clinic.clock.ClockBelief.Sign;

/**
 * Compares the clock with whatever can be had. What another clock said is kept with the steady
 * count of that moment, so that it goes on to say what time it is, whatever the clock is set to.
 *
 * <p>A time source, where one is set, is believed. Browsers elsewhere speak together: two addresses
 * at least, and more that agree than differ; where two or more differ and as many as agree, the
 * clock is wrong. One alone decides nothing. Without either, the clock is compared with the newest
 * entry and with the steady count; a person then says once a day and after each start that it is
 * right, which mends what the steady count shows and never what the record shows.
 */
public final class ClockWatch {

  /** A difference that is not told: clocks of a clinic that are kept by a network differ less. */
  public static final Duration TOLERANCE = Duration.ofMinutes(2);

  private static final Duration BROWSER_COUNTS = Duration.ofHours(12);
  private static final Duration SOURCE_COUNTS = Duration.ofHours(1);
  private static final Duration CONFIRMED_COUNTS = Duration.ofDays(1);
  private static final int ENOUGH = 2;
  private static final int MOST_BROWSERS = 1000;

  private final InstantSource wall;
  private final LongSupplier nanos;
  private final Map<String, Said> browsers = new HashMap<>();
  private Optional<Said> source = Optional.empty();
  private Optional<Word> word = Optional.empty();
  private Said anchor;
  private Optional<Instant> newest;

  /** A time that a clock has said, and the steady count at that moment. */
  private record Said(Instant at, long nanos) {}

  private record Word(Confirmed confirmed, Said said) {}

  /**
   * Begins to watch.
   *
   * @param nanos a count of nanoseconds that nobody can set
   * @param newest when the newest entry was written by a clock that was not known to be wrong
   */
  public ClockWatch(InstantSource wall, LongSupplier nanos, Optional<Instant> newest) {
    this.wall = wall;
    this.nanos = nanos;
    this.newest = newest;
    this.anchor = new Said(wall.instant(), nanos.getAsLong());
  }

  /**
   * What the clock of a browser says now.
   *
   * @param address of another machine; all browsers of one are one voice
   */
  public synchronized void heard(String address, Instant said) {
    browsers.values().removeIf(one -> !counts(one, BROWSER_COUNTS));
    if (browsers.size() < MOST_BROWSERS || browsers.containsKey(address)) {
      browsers.put(address, new Said(said, nanos.getAsLong()));
    }
  }

  /** What the time source says now. */
  public synchronized void told(Instant said) {
    source = Optional.of(new Said(said, nanos.getAsLong()));
  }

  /** What a person says who has compared date and time with another clock. */
  public synchronized void confirmed(String by) {
    var said = new Said(wall.instant(), nanos.getAsLong());
    word = Optional.of(new Word(new Confirmed(by, said.at()), said));
    anchor = said;
  }

  /** What is believed now; the port of a server whose clock is watched. */
  public synchronized ClockBelief belief() {
    Instant now = wall.instant();
    List<Said> voices =
        browsers.values().stream().filter(one -> counts(one, BROWSER_COUNTS)).toList();
    List<Duration> apart =
        voices.stream().map(one -> ahead(now, one)).filter(this::isMuch).toList();
    int agree = voices.size() - apart.size();
    var signs = new ArrayList<Sign>();
    Optional<Duration> bySource =
        source.filter(one -> counts(one, SOURCE_COUNTS)).map(one -> ahead(now, one));
    bySource
        .filter(this::isMuch)
        .ifPresent(ahead -> signs.add(new Sign(Sign.What.TIME_SOURCE, ahead)));
    if (apart.size() >= ENOUGH && apart.size() >= agree) {
      signs.add(new Sign(Sign.What.BROWSERS, apart.getFirst()));
    }
    if (!signs.isEmpty()) {
      return new ClockBelief.Wrong(signs);
    }
    if (bySource.isPresent() || (agree >= ENOUGH && agree > apart.size())) {
      anchor = new Said(now, nanos.getAsLong());
      newest = Optional.of(now);
      return new ClockBelief.Compared(TOLERANCE);
    }
    return alone(now, apart.stream().findFirst());
  }

  /** What is believed while nothing independent answers. */
  private ClockBelief alone(Instant now, Optional<Duration> stranger) {
    List<Sign> signs =
        Stream.concat(
                newest.map(entry -> Duration.between(entry, now)).stream()
                    .filter(Duration::isNegative)
                    .filter(this::isMuch)
                    .map(ahead -> new Sign(Sign.What.RECORD, ahead)),
                Stream.of(ahead(now, anchor))
                    .filter(this::isMuch)
                    .map(ahead -> new Sign(Sign.What.STEADY_COUNT, ahead)))
            .toList();
    if (!signs.isEmpty()) {
      return new ClockBelief.Wrong(signs);
    }
    newest = newest.filter(entry -> entry.isAfter(now)).or(() -> Optional.of(now));
    return new ClockBelief.NotCompared(
        word.filter(one -> counts(one.said(), CONFIRMED_COUNTS)).map(Word::confirmed), stranger);
  }

  private boolean counts(Said one, Duration howLong) {
    return since(one).compareTo(howLong) < 0;
  }

  private Duration since(Said one) {
    return Duration.ofNanos(nanos.getAsLong() - one.nanos());
  }

  private Duration ahead(Instant now, Said one) {
    return Duration.between(one.at().plus(since(one)), now);
  }

  private boolean isMuch(Duration ahead) {
    return ahead.abs().compareTo(TOLERANCE) > 0;
  }
}
