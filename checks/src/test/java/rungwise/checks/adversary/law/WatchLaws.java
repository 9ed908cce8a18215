package rungwise.checks.adversary.law;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.standing.ReportFlag.Kind;
import rungwise.dosing.guard.GuardRule;

/** The laws about what must not be overlooked. */
public final class WatchLaws {

  private static final long TABLET = 72 * 60;
  private static final int THIRD = 3;

  private final Scene scene;
  private final Judge judge;
  private final Ledger ledger;
  private final Watch watch;

  public WatchLaws(Scene scene, Judge judge) {
    this.scene = scene;
    this.judge = judge;
    this.ledger = scene.ledger();
    this.watch = ledger.watch;
  }

  public void check() {
    judge.look(Law.UNSOUND_STOPS, !watch.isSound);
    if (!watch.isSound && scene.leadsAnywhere()) {
      judge.fail(Law.UNSOUND_STOPS, "a dose is open");
    }
    tablets();
    expired();
    List<Told> all = ledger.counting();
    for (int i = 0; i < all.size(); i++) {
      if (!all.get(i).id.isEmpty()) {
        flags(all.get(i), all.subList(0, i + 1));
      }
    }
  }

  private void tablets() {
    Optional<Ledger.Signed> order = ledger.order();
    if (order.isEmpty()) {
      return;
    }
    for (Watch.Tablet one : watch.tablets) {
      boolean near = one.at() <= scene.minute() && scene.minute() < one.at() + TABLET;
      boolean lifted =
          !order.get().atHome()
              && order.get().entry() > one.entry()
              && scene.overrode(GuardRule.PDE5_HOURS);
      judge.look(Law.TABLET_HOURS, near && !lifted);
      if (near && !lifted && (scene.clear() || scene.nextClear())) {
        judge.fail(Law.TABLET_HOURS, "clear after a tablet of " + Minutes.local(one.at()));
      }
    }
  }

  /** What was shown so long ago that it holds no more, unless that was overridden until a day. */
  private void expired() {
    int months = ledger.plan().rules().readyMonths();
    if (months == 0) {
      return;
    }
    for (String item : Needed.forHome(scene.mix())) {
      long day = Minutes.dayOf(ledger.ready.getOrDefault(item, scene.minute()));
      boolean old = Minutes.dayOf(scene.minute()) - day > 31L * months;
      boolean open = old && !scene.lifted(GuardRule.READINESS_EXPIRED);
      judge.look(Law.READY_EXPIRED, open);
      if (open && (scene.clearAtHome() || scene.nextClear())) {
        judge.fail(Law.READY_EXPIRED, "clear at home, " + item + " is too old");
      }
    }
  }

  /**
   * What a prescriber must be told of one report.
   *
   * @param until the injections up to it
   */
  private void flags(Told one, List<Told> until) {
    row(one, until, Ledger.DAY, 2, Kind.TOO_SOON);
    row(one, until, Ledger.DAY, THIRD, Kind.THIRD_IN_A_DAY);
    row(one, until, Ledger.WEEK, Rulebook.IN_SEVEN_DAYS + 1, Kind.TOO_MANY_IN_A_WEEK);
    for (Watch.Tablet tablet : watch.tablets) {
      if (Math.abs(tablet.at() - one.at()) < TABLET
          && (!one.observed || tablet.entry() > one.entry)) {
        told(one, Set.of(Kind.TABLET), Math.max(one.entry, tablet.entry()));
      }
    }
    order(one);
    boolean unready =
        Needed.forHome(one.mix).stream()
            .anyMatch(
                item ->
                    Minutes.dayOf(watch.readySince.getOrDefault(item, Told.NO_END))
                        > Minutes.dayOf(one.at()));
    if (atHome(one) && unready) {
      told(one, Set.of(Kind.NOT_READY), one.entry);
    }
  }

  /** A correction that says nothing of the place leaves it as it was told before. */
  private boolean atHome(Told one) {
    String place = one.said.place();
    for (Told earlier : ledger.earlierThan(one).reversed()) {
      place = place.isEmpty() ? earlier.said.place() : place;
    }
    return !one.observed && !place.equals("clinic");
  }

  private void order(Told one) {
    Optional<Ledger.Signed> order =
        ledger.orders.stream()
            .filter(signed -> signed.minute() <= one.at())
            .reduce((earlier, later) -> later);
    if (order.isEmpty()) {
      told(one, Set.of(Kind.NOT_SIGNED), one.entry);
    } else if (!order.get().mix().isSameAs(one.mix)) {
      told(one, Set.of(Kind.NOT_SIGNED, Kind.OTHER_LABEL), one.entry);
    } else if (!order.get().atHome() && atHome(one)) {
      told(one, Set.of(Kind.NOT_SIGNED, Kind.OTHER_LABEL, Kind.CLINIC_ONLY), one.entry);
    }
  }

  private void row(Told one, List<Told> until, long span, int place, Kind kind) {
    List<Told> row = until.stream().filter(other -> one.at() - other.at() < span).toList();
    boolean news =
        !one.observed || row.stream().anyMatch(other -> !other.observed && other.entry > one.entry);
    if (row.size() >= place && news) {
      told(one, Set.of(kind), row.stream().mapToLong(other -> other.entry).max().orElseThrow());
    }
  }

  /** One of them is told, and stands until a prescriber has seen it after all that it rests on. */
  private void told(Told report, Set<Kind> kinds, long since) {
    judge.look(Law.FLAGGED, true);
    boolean isTold =
        scene.flags().stream()
            .filter(flag -> flag.report().entry().number() == report.entry)
            .anyMatch(flag -> kinds.contains(flag.kind()));
    if (!isTold) {
      judge.fail(Law.FLAGGED, "nothing of " + kinds + " is told of " + report.words());
    }
    boolean unseen = watch.seen < since;
    judge.look(Law.FLAG_STANDS, unseen);
    boolean stands =
        scene.flags().stream()
            .filter(flag -> flag.report().entry().number() == report.entry)
            .anyMatch(flag -> kinds.contains(flag.kind()) && !flag.isSeen());
    if (unseen && isTold && !stands) {
      judge.fail(Law.FLAG_STANDS, kinds + " counts as seen of " + report.words());
    }
  }
}
