package rungwise.clinic.beside;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Observing;

/**
 * What other courses of the same man say against a dose: every injection that was ever said, what
 * is not known of the time before, and who is under observation. Nothing of it grants anything: an
 * injection there is none here, and no review or reopening of there counts.
 */
public final class JoinedReading {

  private JoinedReading() {}

  /** A course's own history with what others say. */
  public static History added(
      History own, List<JoinLog.Read> others, Function<JoinLog.Read, History> historyOf) {
    if (others.isEmpty()) {
      return own;
    }
    List<Injection> known = own.everSaid();
    var said = new ArrayList<Injection>();
    var observing = new ArrayList<Observing>(own.observing());
    Before before = own.before();
    for (JoinLog.Read other : others) {
      History there = historyOf.apply(other);
      there.everSaid().stream()
          .filter(one -> !known.contains(one))
          .map(one -> since(one, other.since()))
          .filter(one -> !said.contains(one))
          .forEach(said::add);
      observing.addAll(there.observing());
      before = joined(before, there.before());
    }
    return new History(
        own.injections(),
        own.mayHaveBeen(),
        own.struck(),
        observing,
        own.reopenings(),
        own.reviews(),
        own.acceptances(),
        before.with(before.elsewhere().withJoined(said), /* isOpenThere= */ false));
  }

  /** What was lifted here before it was joined lifts nothing of there. */
  private static Injection since(Injection one, long joined) {
    return new Injection(
        Math.max(one.entry(), joined),
        one.at(),
        one.preparation(),
        one.drawn(),
        one.ordered(),
        one.grade(),
        one.soft(),
        one.causes(),
        one.setting(),
        one.stock());
  }

  private static Before joined(Before here, Before there) {
    return new Before(
        here.undated(),
        union(here.unmapped(), there.unmapped()),
        union(here.nobodyKnows(), there.nobodyKnows()),
        here.isOpen() || there.isOpen(),
        here.elsewhere());
  }

  private static <T> List<T> union(List<T> some, List<T> others) {
    return Stream.concat(some.stream(), others.stream()).distinct().toList();
  }
}
