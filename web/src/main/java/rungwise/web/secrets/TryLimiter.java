package rungwise.web.secrets;

import io.github.bucket4j.Bandwidth;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * How often a secret may be tried. A browser that has signed in with a name before is judged by its
 * own tries alone, so that no stranger locks anybody out of a device that is in use. Everybody else
 * is asked by address, then by name and address, then by name from everywhere, and a try that one
 * of them refuses takes nothing from those after it: one address cannot use up a name.
 *
 * <p>Of one name at most 100 wrong passwords in a row are taken from unknown devices, and after 100
 * in a row a device counts as unknown. Whether there is such a name is not asked. Everything but
 * known devices is forgotten when the program ends.
 */
public final class TryLimiter {

  /** NIST SP 800-63B, 5.2.2: no more than 100 failures in a row on one account. */
  private static final int MOST_IN_A_ROW = 100;

  private static final int LONGEST_NAME_KEPT = 40;
  private static final Duration ABOUT_FOR_EVER = Duration.ofDays(36_500);

  private final TryTable addresses;
  private final TryTable pairs;
  private final TryTable names;
  private final TryTable inARow;
  private final Predicate<String> isHeld;
  private final Map<String, Integer> inARowOfHeld = new ConcurrentHashMap<>();
  private final TryTable devices;
  private final TryTable devicesInARow;
  private final TryTable passkeys;

  /**
   * Counts tries from now on.
   *
   * @param isHeld whether somebody has that name; his count shares its place with no other, so that
   *     made-up names cannot fill it
   */
  public TryLimiter(SteadyTime time, Predicate<String> isHeld) {
    this.isHeld = isHeld;
    this.addresses = table(time, refilled(30, Duration.ofSeconds(5)));
    this.pairs = table(time, refilled(6, Duration.ofSeconds(20)));
    this.names = table(time, refilled(30, Duration.ofSeconds(30)));
    this.inARow = table(time, refilled(MOST_IN_A_ROW, ABOUT_FOR_EVER));
    this.devices = table(time, refilled(6, Duration.ofSeconds(20)));
    this.devicesInARow = table(time, refilled(MOST_IN_A_ROW, ABOUT_FOR_EVER));
    this.passkeys = table(time, refilled(30, Duration.ofSeconds(5)));
  }

  private static TryTable table(SteadyTime time, Bandwidth limit) {
    return new TryTable(limit, time.meter());
  }

  private static Bandwidth refilled(int capacity, Duration oneEvery) {
    return Bandwidth.builder().capacity(capacity).refillGreedy(1, oneEvery).build();
  }

  /**
   * Counts one try of a password.
   *
   * @param device the browser, if it has signed in with this name before
   */
  public Optional<Refusal> tryPassword(String address, String name, Optional<String> device) {
    String typed = kept(name);
    if (device.isPresent() && devicesInARow.has(pairOf(device.get(), typed))) {
      return first(
          List.of(
              () -> devices.take(pairOf(device.get(), typed)).map(Refusal::tooOften),
              () -> devicesInARow.take(pairOf(device.get(), typed)).map(Refusal::tooOften)));
    }
    String from = Addresses.network(address);
    return first(
        List.of(
            () -> addresses.take(from).map(Refusal::tooOften),
            () -> pairs.take(pairOf(from, typed)).map(Refusal::tooOften),
            () -> names.take(typed).map(Refusal::tooOften),
            () -> oneMoreInARow(typed)));
  }

  private Optional<Refusal> oneMoreInARow(String name) {
    boolean isTaken =
        isHeld.test(name)
            ? inARowOfHeld.merge(name, 1, Integer::sum) <= MOST_IN_A_ROW
            : inARow.take(name).isEmpty();
    return isTaken
        ? Optional.empty()
        : Optional.of(new Refusal(Refusal.Because.UNKNOWN_DEVICE, Duration.ZERO));
  }

  /** Counts one try of a secret that nobody can guess, such as a one-time code. */
  public Optional<Refusal> tryCode(String address, String name) {
    String from = Addresses.network(address);
    return first(
        List.of(
            () -> addresses.take(from).map(Refusal::tooOften),
            () -> pairs.take(pairOf(from, kept(name))).map(Refusal::tooOften)));
  }

  /** Counts one try of a passkey, which no number of wrong passwords holds up. */
  public Optional<Refusal> tryPasskey(String address) {
    return passkeys.take(Addresses.network(address)).map(Refusal::tooOften);
  }

  private static Optional<Refusal> first(List<Supplier<Optional<Refusal>>> asked) {
    return asked.stream().flatMap(one -> one.get().stream()).findFirst();
  }

  /**
   * Notes that a name's holder has got in: earlier tries no longer count, nor does this one, so
   * that a busy clinic behind one address is not held up.
   */
  public void prove(String address, String name, Optional<String> device) {
    String from = Addresses.network(address);
    String typed = kept(name);
    pairs.forget(pairOf(from, typed));
    inARowOfHeld.remove(typed);
    device.ifPresent(known -> forgetTriesOf(pairOf(known, typed)));
    if (device.isEmpty()) {
      addresses.giveBack(from);
      names.giveBack(typed);
    }
  }

  private void forgetTriesOf(String pair) {
    devices.forget(pair);
    devicesInARow.forget(pair);
  }

  /** Notes that a passkey was right. */
  public void provePasskey(String address, String name) {
    passkeys.giveBack(Addresses.network(address));
    inARowOfHeld.remove(kept(name));
  }

  private static String kept(String name) {
    return name.substring(0, Math.min(name.length(), LONGEST_NAME_KEPT));
  }

  private static String pairOf(String from, String name) {
    return from + " " + name;
  }
}
