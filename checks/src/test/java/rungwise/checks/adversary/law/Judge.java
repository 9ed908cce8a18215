package rungwise.checks.adversary.law;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Counts how often each law could have been broken, and keeps the first that was. */
public final class Judge {

  private final Set<Law> awaited;
  private final Map<Law, Long> looked = new EnumMap<>(Law.class);
  private final Map<Law, Long> broken = new EnumMap<>(Law.class);
  private Optional<Breach> breach = Optional.empty();

  /** A law that was broken, in words. */
  public record Breach(Law law, String words) {}

  public Judge(Set<Law> awaited) {
    this.awaited = awaited.isEmpty() ? EnumSet.noneOf(Law.class) : EnumSet.copyOf(awaited);
  }

  /** The law was looked at; it counts where it could have been broken. */
  public void look(Law law, boolean couldBreak) {
    if (couldBreak) {
      looked.merge(law, 1L, Long::sum);
    }
  }

  /** The law was broken. */
  public void fail(Law law, String words) {
    broken.merge(law, 1L, Long::sum);
    if (breach.isEmpty() && !awaited.contains(law)) {
      breach = Optional.of(new Breach(law, words));
    }
  }

  /** The first breach since it was last asked. */
  public Optional<Breach> takeBreach() {
    Optional<Breach> taken = breach;
    breach = Optional.empty();
    return taken;
  }

  public boolean isBroken() {
    return breach.isPresent();
  }

  public long looked(Law law) {
    return looked.getOrDefault(law, 0L);
  }

  public long broken(Law law) {
    return broken.getOrDefault(law, 0L);
  }

  /** Takes over the counts of another one. */
  public void add(Judge other) {
    other.looked.forEach((law, count) -> looked.merge(law, count, Long::sum));
    other.broken.forEach((law, count) -> broken.merge(law, count, Long::sum));
  }
}
