package rungwise.checks.adversary;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.checks.adversary.law.Judge;
import rungwise.checks.adversary.law.Law;

/** Drops entries of a record while the same law stays broken. */
final class Shrinker {

  private Shrinker() {}

  static Life.Broken shrink(House house, List<Act> acts, Life.Broken first, Set<Law> awaited) {
    var kept = new ArrayList<>(acts.subList(0, first.acts()));
    Life.Broken shortest = first;
    boolean shorter = true;
    while (shorter) {
      shorter = false;
      for (int i = kept.size() - 1; i > 0; i--) {
        var fewer = new ArrayList<>(kept);
        Act gone = fewer.remove(i);
        if (i < fewer.size()) {
          Act next = fewer.get(i);
          fewer.set(i, new Act(next.kind(), next.after() + gone.after(), next.dice()));
        }
        Optional<Life.Broken> still = Life.live(house, new Judge(awaited), fewer);
        if (still.filter(one -> one.breach().law() == first.breach().law()).isPresent()) {
          kept = new ArrayList<>(fewer.subList(0, still.get().acts()));
          shortest = still.get();
          shorter = true;
        }
      }
    }
    return shortest;
  }
}
