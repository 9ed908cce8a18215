package rungwise.dosing.urgent.rescue;

import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * How published texts give phenylephrine for a long erection. They differ, and stand side by side:
 * none is the clinic's own.
 */
public enum PublishedScheme {
  EAU(
      "European guideline (EAU)",
      micrograms(200),
      micrograms(200),
      Optional.empty(),
      Optional.of(micrograms(1_000)),
      Optional.empty(),
      Source.read(Citation.EAU_SEXUAL_HEALTH, "priapism, Figure 13, page 112 of the reprint")),
  AUA_SMSNA(
      "American guideline (AUA/SMSNA)",
      micrograms(100),
      micrograms(500),
      Optional.of(Volume.ofMicrolitres(1_000)),
      Optional.empty(),
      Optional.of(TimeSpan.ofHours(1)),
      Source.secondary(
          Citation.AUA_PRIAPISM_2021,
          "1 mL of 100 to 500 mcg/mL; no largest sum stands in the text that was seen"));

  private static final TimeSpan SOONEST = TimeSpan.ofMinutes(3);
  private static final TimeSpan LATEST = TimeSpan.ofMinutes(5);

  private final String words;
  private final Mass least;
  private final Mass most;
  private final Optional<Volume> eachVolume;
  private final Optional<Mass> inAnHour;
  private final Optional<TimeSpan> tried;
  private final Source source;

  PublishedScheme(
      String words,
      Mass least,
      Mass most,
      Optional<Volume> eachVolume,
      Optional<Mass> inAnHour,
      Optional<TimeSpan> tried,
      Source source) {
    this.words = words;
    this.least = least;
    this.most = most;
    this.eachVolume = eachVolume;
    this.inAnHour = inAnHour;
    this.tried = tried;
    this.source = source;
  }

  private static Mass micrograms(long count) {
    return Mass.parseMicrograms(Long.toString(count)).orThrow();
  }

  public String words() {
    return words;
  }

  /** The smallest dose. */
  public Mass least() {
    return least;
  }

  /** The largest dose. */
  public Mass most() {
    return most;
  }

  /** The volume of each dose, where the text has one. */
  public Optional<Volume> eachVolume() {
    return eachVolume;
  }

  /** The shortest time between two doses. */
  public TimeSpan soonest() {
    return SOONEST;
  }

  /** The longest time between two doses. */
  public TimeSpan latest() {
    return LATEST;
  }

  /** The largest sum in an hour, where the text has one. */
  public Optional<Mass> inAnHour() {
    return inAnHour;
  }

  /** For how long it is tried before it has failed, where the text says so. */
  public Optional<TimeSpan> tried() {
    return tried;
  }

  public Source source() {
    return source;
  }
}
