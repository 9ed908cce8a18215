package rungwise.web.clock;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.clock.ClockCheck;
import rungwise.web.page.ClockNotice;
import rungwise.web.page.ClockNotice.Say;

/** What every page says of the clock. */
public record ClockWords(ClockCheck check, InstantSource clock, ClinicTime time) {

  private static final String TAKEN =
      "Reports and calls are taken as always: write dates and times by another clock, and count the"
          + " hours of every erection by it. 4 hours are an emergency.";

  /** When a page is made, by the clock of this server. */
  public String asOf() {
    return time.words(clock.instant());
  }

  /** The notice of a page; a clock that is only not compared is no business of strangers. */
  public ClockNotice notice(boolean isSignedIn, String script) {
    Instant now = clock.instant();
    String sends = isSignedIn ? script : "";
    return switch (check.belief()) {
      case ClockBelief.Compared compared ->
          new ClockNotice(Say.NOTHING, /* asks= */ false, "", List.of(), sends);
      case ClockBelief.Wrong wrong ->
          new ClockNotice(
              Say.LOUDLY,
              isSignedIn && wrong.isAskedOfPeople(),
              "The clock of this server is wrong",
              List.of(
                  "It says " + time.words(now) + ": " + wrongBy(wrong) + ".",
                  "No answer that rests on time is known, and nothing is signed.",
                  TAKEN,
                  wrong.isAskedOfPeople()
                      ? "Tell your administrator now. Once it is right, confirm date and time."
                      : "Tell your administrator now: that clock has to be set right."),
              sends);
      case ClockBelief.NotCompared alone when !isSignedIn -> ClockNotice.NONE;
      case ClockBelief.NotCompared alone -> alone(alone, now, sends);
    };
  }

  private static String wrongBy(ClockBelief.Wrong wrong) {
    return String.join("; ", wrong.signs().stream().map(ClockBelief.Sign::words).toList());
  }

  private ClockNotice alone(ClockBelief.NotCompared alone, Instant now, String sends) {
    Optional<String> stranger =
        alone
            .stranger()
            .map(
                ahead ->
                    "The clock of one browser elsewhere differs by "
                        + ClockBelief.span(ahead.abs())
                        + ": one alone decides nothing, so look which of the two is right.");
    return alone
        .confirmed()
        .map(
            confirmed ->
                new ClockNotice(
                    Say.QUIETLY,
                    /* asks= */ false,
                    "Clock not compared: this server says "
                        + time.words(now)
                        + ". "
                        + confirmed.by()
                        + " confirmed it at "
                        + time.clock(confirmed.at(), now)
                        + ".",
                    stranger.stream().toList(),
                    sends))
        .orElseGet(
            () ->
                new ClockNotice(
                    Say.LOUDLY,
                    /* asks= */ true,
                    "Clock not compared",
                    List.of(
                        "This server says " + time.words(now) + ", and no other clock answers.",
                        stranger.orElse(
                            "No answer that rests on time is known until somebody here has"
                                + " confirmed date and time, once a day and after each start."),
                        TAKEN),
                    sends));
  }
}
