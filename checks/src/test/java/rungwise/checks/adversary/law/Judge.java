package rungwise.checks.adversary.law;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Counts how often each law could have been broken, and keeps the first that was. */
public final class Judge {

  private static final int LAWS = Law.values().length;

  private final Set<Law> awaited;
  private final long[] looked = new long[LAWS];
  private final long[] broken = new long[LAWS];
  private Optional<Breach> breach = Optional.empty();

  /** A law that was broken, in words. */
  public record Breach(Law law, String words) {}

  public Judge(Set<Law> awaited) {
    this.awaited = awaited.isEmpty() ? EnumSet.noneOf(Law.class) : EnumSet.copyOf(awaited);
  }

  /** The law was looked at; it counts where it could have been broken. */
  public void look(Law law, boolean couldBreak) {
    if (couldBreak) {
      looked[law.ordinal()]++;
    }
  }

  /** The law was broken. */
  public void fail(Law law, String words) {
    broken[law.ordinal()]++;
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
    return looked[law.ordinal()];
  }

  public long broken(Law law) {
    return broken[law.ordinal()];
  }

  /** Takes over the counts of another one. */
  public void add(Judge other) {
    for (int i = 0; i < LAWS; i++) {
      looked[i] += other.looked[i];
      broken[i] += other.broken[i];
    }
  }
}
