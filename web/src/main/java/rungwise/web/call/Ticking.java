package rungwise.web.call;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.known.DurationLimits;
import rungwise.quantities.TimeSpan;

/**
 * What the script of a call counts with, so that it goes on when the server does not answer.
 *
 * @param now the instant by the server's clock
 * @param isWrong whether that clock is known to be wrong, so that nothing can be counted by it
 * @param offsets how far the clinic's clocks are from UTC around now: from which millisecond since
 *     1970 on, and by how many minutes, such as "0:-360,1792915200000:-300"
 * @param script the address of the script
 */
public record Ticking(Instant now, boolean isWrong, String offsets, String script) {

  private static final Duration BEFORE = Duration.ofDays(4);
  private static final Duration AFTER = Duration.ofDays(4);

  static Ticking of(Instant now, ClinicTime time, String script, boolean isWrong) {
    return new Ticking(now, isWrong, offsets(time.zone().getRules(), now), script);
  }

  private static String offsets(ZoneRules rules, Instant now) {
    Instant from = now.minus(BEFORE);
    Stream<String> changes =
        Stream.iterate(
                rules.nextTransition(from),
                change -> change != null && change.getInstant().isBefore(now.plus(AFTER)),
                change -> rules.nextTransition(change.getInstant()))
            .map(Ticking::pair);
    return Stream.concat(Stream.of(pair(0, rules.getOffset(from))), changes)
        .collect(Collectors.joining(","));
  }

  private static String pair(ZoneOffsetTransition change) {
    return pair(change.getInstant().toEpochMilli(), change.getOffsetAfter());
  }

  private static String pair(long from, ZoneOffset offset) {
    return from + ":" + offset.getTotalSeconds() / Duration.ofMinutes(1).toSeconds();
  }

  /** Milliseconds since 1970. */
  public long milliseconds() {
    return now.toEpochMilli();
  }

  /** From how many minutes on it is long. */
  public String longMinutes() {
    return minutes(DurationLimits.CLOSES_VOLUME.value());
  }

  /** From how many minutes on it is an emergency. */
  public String emergencyMinutes() {
    return minutes(DurationLimits.EMERGENCY.value());
  }

  private static String minutes(TimeSpan span) {
    return span.minutesText();
  }
}
