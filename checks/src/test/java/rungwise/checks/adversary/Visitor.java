package rungwise.checks.adversary;

import java.util.Optional;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Told;
import rungwise.clinic.course.EntryId;
import rungwise.quantities.Reading;

/** Injections in the clinic, watched until he is soft or has left. */
final class Visitor {

  private final Actor actor;
  private final Reporter reporter;
  private final House house;
  private final Ledger ledger;

  Visitor(Actor actor, Reporter reporter) {
    this.actor = actor;
    this.reporter = reporter;
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  /** A whole visit: the needle, the time until he is soft or leaves, and what was seen. */
  String visit(SplittableRandom random) {
    String begun = visitStart(random);
    if (ledger.watched.isEmpty()) {
      return begun;
    }
    actor.now +=
        Reporter.MINUTES[
            random.nextInt(random.nextInt(4) > 0 ? Reporter.SHORT : Reporter.MINUTES.length)];
    house.setClock(actor.now);
    return begun + "; " + visitEnd(random);
  }

  String visitStart(SplittableRandom random) {
    long drawn = ledger.order().map(Ledger.Signed::volume).orElseGet(() -> reporter.drawn(random));
    boolean given = random.nextInt(3) == 0;
    Optional<Ledger.Vial> from = Desk.inHand(ledger, random, given);
    Reading<Long> read =
        house.room.start(
            House.EDUCATOR,
            house.course(),
            Desk.start(actor.now, drawn, ledger.plan().barrel(), given)
                .from(ledger.vials.isEmpty() ? "" : Desk.vial(from)));
    if (read.found().isPresent()) {
      String id = house.memory.lastEntry().id().text();
      String vial = from.map(Ledger.Vial::root).orElse("");
      Mix planned = ledger.plan().mix();
      boolean asPlanned = from.map(Ledger.Vial::mix).orElse(planned).isSameAs(planned);
      long ordered = asPlanned ? ledger.order().map(Ledger.Signed::volume).orElse(0L) : 0;
      ledger.watched.add(new Ledger.Watched(id, actor.now, planned, drawn, ordered, vial));
    }
    return "educator injects " + drawn + " uL in the clinic" + Actor.outcome(read);
  }

  String visitEnd(SplittableRandom random) {
    if (ledger.watched.isEmpty()) {
      return "";
    }
    Ledger.Watched one = ledger.watched.getFirst();
    boolean left = random.nextInt(7) == 0;
    long lasted = actor.now - one.at();
    var said =
        new Told.Said(
            one.at(),
            one.drawn(),
            Reporter.grade(random),
            left ? "at_least" : "exactly",
            lasted,
            0,
            Reporter.asked(random),
            "",
            one.vial(),
            lasted);
    Reading<Long> read =
        house.room.end(
            House.EDUCATOR,
            house.course(),
            new EntryId(one.id()),
            Desk.end(actor.now, left, said.grade(), said.asked()));
    if (read.found().isPresent()) {
      ledger.watched.removeFirst();
      ended(read.orThrow(), said, one);
    }
    return "educator ends the observation: " + said.words() + Actor.outcome(read);
  }

  /** What was planned when the needle went in stands, whatever is planned since. */
  private void ended(long entry, Told.Said said, Ledger.Watched watched) {
    Mix mix = reporter.mix(said, watched.planned());
    ledger.told.add(
        new Told(
            said,
            entry,
            house.memory.lastEntry().id().text(),
            mix,
            watched.ordered(),
            /* observed= */ true,
            reporter.drawnFrom(said, mix),
            /* byPrescriber= */ false));
  }
}
