package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * How often a secret may be tried. Three buckets are asked, each refilled steadily: one for the
 * address, one for the name as tried from this address, one for the name from everywhere.
 *
 * <p>A stranger who tries a clinician's name from elsewhere fills the third bucket only, and an
 * address from which that name has signed in is not judged by it: nobody is locked out of the desk
 * he works at. Names are counted as typed, whether or not they exist.
 */
public final class TryLimiter {

  private static final int MOST_KEPT = 20_000;
  private static final int LONGEST_NAME_KEPT = 40;

  private static final String ADDRESS = "address ";

  private static final Bandwidth PER_ADDRESS = refilled(30, Duration.ofSeconds(5));
  private static final Bandwidth PER_NAME_AND_ADDRESS = refilled(6, Duration.ofSeconds(20));
  private static final Bandwidth PER_NAME = refilled(30, Duration.ofSeconds(30));

  private final TimeMeter meter;
  private final Recent<String, Bucket> buckets = new Recent<>(MOST_KEPT);
  private final Recent<String, Boolean> proven = new Recent<>(MOST_KEPT);

  public TryLimiter(InstantSource clock) {
    this.meter = new InstantMeter(clock);
  }

  private static Bandwidth refilled(int capacity, Duration oneEvery) {
    return Bandwidth.builder().capacity(capacity).refillGreedy(1, oneEvery).build();
  }

  /** Counts one try; if it is one too many, how long to wait before the next. */
  public Optional<Duration> tryOnce(String address, String name) {
    String from = Addresses.network(address);
    String typed = kept(name);
    String pair = pairOf(from, typed);
    List<Bucket> asked = new ArrayList<>();
    asked.add(bucket(ADDRESS + from, PER_ADDRESS));
    asked.add(bucket(pair, PER_NAME_AND_ADDRESS));
    if (proven.find(pair).isEmpty()) {
      asked.add(bucket("name " + typed, PER_NAME));
    }
    return asked.stream()
        .map(bucket -> bucket.tryConsumeAndReturnRemaining(1))
        .filter(probe -> !probe.isConsumed())
        .map(probe -> Duration.ofNanos(probe.getNanosToWaitForRefill()))
        .max(Duration::compareTo);
  }

  /**
   * Notes that a name has signed in from an address: its earlier tries there no longer count, and
   * this one not for the address, so that a busy clinic behind one address is not held up.
   */
  public void prove(String address, String name) {
    String from = Addresses.network(address);
    String pair = pairOf(from, kept(name));
    buckets.forget(pair);
    bucket(ADDRESS + from, PER_ADDRESS).addTokens(1);
    proven.put(pair, true);
  }

  /** What a person is told who tried too often. */
  public static String say(Duration wait) {
    return "There were too many tries. Wait %s seconds, then try again.".formatted(seconds(wait));
  }

  /** The whole seconds to wait, for the Retry-After header. */
  public static String seconds(Duration wait) {
    return Long.toString(wait.toSeconds() + 1);
  }

  private static String kept(String name) {
    return name.substring(0, Math.min(name.length(), LONGEST_NAME_KEPT));
  }

  private static String pairOf(String from, String name) {
    return "pair " + from + " " + name;
  }

  private Bucket bucket(String key, Bandwidth limit) {
    Supplier<Bucket> full =
        () -> Bucket.builder().addLimit(limit).withCustomTimePrecision(meter).build();
    return buckets.findOrMake(key, full);
  }
}
