package rungwise.checks.adversary;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import rungwise.checks.adversary.law.Law;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Told;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.quantities.Reading;

/** Injections and what is told of them: in time, late, twice, corrected, withdrawn. */
final class Reporter {

  static final long[] MINUTES = {
    5, 15, 20, 30, 40, 45, 55, 59, 60, 61, 75, 90, 100, 119, 120, 121, 150, 200, 239, 240, 241, 300
  };
  private static final String[] LONGER = {"from_61", "from_120", "from_240", "still"};
  static final int SHORT = 9;
  private static final int[] GRADES = {0, 0, 1, 1, 2, 2, 2, 3, 3, 4};

  private final Actor actor;
  private final House house;
  private final Ledger ledger;

  Reporter(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  private static Account who(SplittableRandom random) {
    return switch (random.nextInt(6)) {
      case 0 -> House.PRESCRIBER;
      case 1 -> House.ON_CALL;
      default -> House.EDUCATOR;
    };
  }

  String report(SplittableRandom random) {
    Account who = who(random);
    var said = said(random, when(random));
    return tell(who, said, Optional.empty());
  }

  /** An injection of just before that leaves nothing to ask; empty where there was one then. */
  Optional<String> plain() {
    long at = actor.now - 21;
    boolean isTaken =
        Stream.concat(
                ledger.told.stream().map(Told::at), ledger.watched.stream().map(one -> one.at()))
            .anyMatch(one -> one == at);
    return isTaken || at < ledger.plan().minute()
        ? Optional.empty()
        : Optional.of(
            tell(
                House.EDUCATOR,
                new Told.Said(
                    at, actor.rungs().getFirst(), 2, "exactly", 20, 0, "none_found", "", "", 21),
                Optional.empty()));
  }

  private long when(SplittableRandom random) {
    return switch (random.nextInt(8)) {
      case 0 -> actor.now;
      case 1 -> actor.now - random.nextInt(120);
      case 2 -> actor.now - Ledger.DAY - random.nextInt(3000);
      case 3 ->
          ledger.told.isEmpty()
              ? actor.now - 300
              : ledger.told.get(random.nextInt(ledger.told.size())).at() + random.nextInt(3) * 60L;
      default -> actor.now - 60L * (1 + random.nextInt(20));
    };
  }

  private Told.Said said(SplittableRandom random, long at) {
    return soft(
        random,
        new Told.Said(
            at,
            drawn(random),
            grade(random),
            "",
            0,
            0,
            asked(random),
            place(random),
            vial(random),
            actor.now - at));
  }

  static int grade(SplittableRandom random) {
    return GRADES[random.nextInt(GRADES.length)];
  }

  static String asked(SplittableRandom random) {
    return switch (random.nextInt(10)) {
      case 0 -> "one_found";
      case 1, 2 -> "not_asked";
      default -> "none_found";
    };
  }

  private static String place(SplittableRandom random) {
    return switch (random.nextInt(8)) {
      case 0 -> "clinic";
      case 1, 2 -> "home";
      default -> "";
    };
  }

  private String vial(SplittableRandom random) {
    return ledger.vials.isEmpty() || random.nextInt(10) < 6
        ? ""
        : ledger.vials.get(random.nextInt(ledger.vials.size())).entry();
  }

  long drawn(SplittableRandom random) {
    Optional<Ledger.Signed> order = ledger.order();
    long step = ledger.plan().barrel().equals("u100-1-two") ? 20 : 10;
    return switch (random.nextInt(10)) {
      case 0 -> {
        List<Long> rungs = actor.rungs();
        yield rungs.get(random.nextInt(rungs.size()));
      }
      case 1 -> orLowest(order.map(Ledger.Signed::next).filter(next -> next > 0));
      case 2 -> orLowest(order.map(one -> Math.max(step, one.volume() - step)));
      case 3 -> orLowest(order.map(one -> one.volume() + step));
      case 4 -> step * (1 + random.nextInt((int) (300 / step)));
      default -> orLowest(order.map(Ledger.Signed::volume));
    };
  }

  private long orLowest(Optional<Long> volume) {
    return volume.orElseGet(() -> actor.rungs().getFirst());
  }

  private static Told.Said soft(SplittableRandom random, Told.Said said) {
    long minutes = MINUTES[random.nextInt(random.nextInt(3) > 0 ? SHORT : MINUTES.length)];
    long more = minutes + 1 + random.nextInt(120);
    return switch (random.nextInt(16)) {
      case 0 -> with(said, "not_known", 0, 0);
      case 1 -> with(said, "at_least", minutes, 0);
      case 2 -> with(said, "between", minutes, more);
      case 3 -> with(said, "between", 0, minutes);
      case 4 -> with(said, "up_to_60", 0, 0);
      case 5 -> with(said, LONGER[random.nextInt(LONGER.length)], 0, 0);
      case 6 -> with(said, said.grade() == 0 ? "no_change" : "from_61", 0, 0);
      default -> with(said, "exactly", minutes, 0);
    };
  }

  private static Told.Said with(Told.Said said, String soft, long first, long second) {
    return new Told.Said(
        said.at(),
        said.drawn(),
        said.grade(),
        soft,
        first,
        second,
        said.asked(),
        said.place(),
        said.vial(),
        said.since());
  }

  /** What is from before is in no report. */
  private List<Told> correctable() {
    return ledger.counting().stream().filter(one -> !one.id.isEmpty()).toList();
  }

  private Told.Said since(Told.Said said) {
    return new Told.Said(
        said.at(),
        said.drawn(),
        said.grade(),
        said.soft(),
        said.first(),
        said.second(),
        said.asked(),
        said.place(),
        said.vial(),
        actor.now - said.at());
  }

  String correct(SplittableRandom random) {
    List<Told> all = correctable();
    if (all.isEmpty()) {
      return "";
    }
    Told old = all.get(random.nextInt(all.size()));
    Told.Said was = old.said;
    Told.Said other = said(random, random.nextInt(6) == 0 ? when(random) : was.at());
    Told.Said said =
        switch (random.nextInt(8)) {
          case 0 -> other;
          case 1 ->
              new Told.Said(
                  was.at(),
                  other.drawn(),
                  was.grade(),
                  was.soft(),
                  was.first(),
                  was.second(),
                  was.asked(),
                  was.place(),
                  was.vial(),
                  actor.now - was.at());
          case 2 ->
              new Told.Said(
                  was.at(),
                  was.drawn(),
                  other.grade(),
                  was.soft(),
                  was.first(),
                  was.second(),
                  other.asked(),
                  was.place(),
                  was.vial(),
                  actor.now - was.at());
          default -> since(with(was, other.soft(), other.first(), other.second()));
        };
    return tell(who(random), said, Optional.of(old));
  }

  private String tell(Account who, Told.Said said, Optional<Told> old) {
    String barrel = ledger.plan().barrel();
    Reading<Long> read =
        house.titration.report(
            who, house.course(), Desk.report(said, barrel, old.map(one -> new EntryId(one.id))));
    read.found().ifPresent(entry -> told(entry, said, old, who));
    if (read.found().isEmpty() && said.mayBeFourHours()) {
      ledger.worries.add(
          new Ledger.Worry(
              house.memory.lastNumber(), said.at(), old.map(one -> one.id).orElse("")));
    }
    return who.fullName()
        + (old.isPresent()
            ? " corrects the report of " + Minutes.local(old.get().at())
            : " reports")
        + " an injection of "
        + Minutes.local(said.at())
        + ": "
        + said.words()
        + Actor.outcome(read);
  }

  private void told(long entry, Told.Said said, Optional<Told> old, Account who) {
    Mix planned =
        old.filter(one -> one.said.vial().isEmpty())
            .map(one -> one.mix)
            .orElseGet(() -> ledger.planAt(said.at()).mix());
    Mix mix = mix(said, planned);
    boolean prescriber = who.equals(House.PRESCRIBER);
    ledger.lastByPrescriber = prescriber;
    var told =
        new Told(
            said,
            entry,
            house.memory.lastEntry().id().text(),
            mix,
            ordered(said, mix),
            old.filter(one -> one.observed).isPresent(),
            drawnFrom(said, mix),
            prescriber);
    old.ifPresent(
        one -> {
          one.replacedBy = Optional.of(told);
          one.struckByPrescriber |= prescriber;
        });
    ledger.told.add(told);
  }

  /**
   * What the label of the vial says that was named, else what was planned. Which of several records
   * of the same mixture was written down makes no difference to what was injected.
   */
  Mix mix(Told.Said said, Mix planned) {
    Mix label = named(said).map(Ledger.Vial::mix).orElse(planned);
    if (label.isSameAs(planned)) {
      return planned;
    }
    actor.judge.look(Law.LABEL_DECIDES, true);
    String kept = house.file().reports().getLast().fact().preparation().value();
    Optional<Mix> heeded =
        Stream.of(Mix.values())
            .filter(one -> one.id.equals(kept))
            .filter(label::isSameAs)
            .findFirst();
    if (heeded.isEmpty()) {
      actor.judge.fail(Law.LABEL_DECIDES, "kept as " + kept + ", the label says " + label.label());
    }
    return heeded.orElse(label);
  }

  private long ordered(Told.Said said, Mix mix) {
    return ledger
        .orderAt(said.at(), mix)
        .map(one -> one.next() == said.drawn() ? said.drawn() : one.volume())
        .orElse(0L);
  }

  private Optional<Ledger.Vial> named(Told.Said said) {
    return ledger.vials.stream()
        .filter(one -> one.entry().equals(said.vial()) || one.root().equals(said.vial()))
        .findFirst();
  }

  /** Without a vial that was named nothing is known of it. */
  Told.Drawn drawnFrom(Told.Said said, Mix mix) {
    return named(said)
        .map(one -> new Told.Drawn(one.root(), /* known= */ true, one.made(), mix.powder))
        .orElse(Told.Drawn.UNKNOWN);
  }

  String withdraw(SplittableRandom random) {
    List<Told> all = correctable();
    if (all.isEmpty()) {
      return "";
    }
    Told old = all.get(random.nextInt(all.size()));
    Account who = who(random);
    Reading<Long> read =
        house.titration.withdraw(who, house.course(), new EntryId(old.id), "entered in error");
    if (read.found().isPresent()) {
      old.withdrawn = true;
      ledger.lastByPrescriber = who.equals(House.PRESCRIBER);
      old.struckByPrescriber |= ledger.lastByPrescriber;
    }
    return who.fullName()
        + " withdraws the report of "
        + Minutes.local(old.at())
        + Actor.outcome(read);
  }
}
