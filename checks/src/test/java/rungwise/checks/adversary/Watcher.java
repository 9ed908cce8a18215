package rungwise.checks.adversary;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Law;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Told;
import rungwise.checks.adversary.law.Watch;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.people.Account;
import rungwise.clinic.room.HandOverDraft;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.quantities.Reading;

/** What must not be overlooked: tablets, flags, men who left, histories undone, a broken record. */
final class Watcher {

  private static final String[] TABLETS = {"SILDENAFIL", "TADALAFIL", "OTHER"};

  private final Actor actor;
  private final House house;
  private final Ledger ledger;

  Watcher(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  /** A tablet that he took just now. */
  String tablet(SplittableRandom random) {
    String which = TABLETS[random.nextInt(TABLETS.length)];
    Optional<Long> entry =
        house
            .titration
            .reports()
            .tookTablet(
                House.EDUCATOR, house.course(), ReportDraft.EMPTY.with(ReportPart.TABLET, which))
            .entry();
    entry.ifPresent(number -> ledger.watch.tablets.add(new Watch.Tablet(number, actor.now)));
    return "educator writes down a tablet: " + which + (entry.isEmpty() ? ": refused" : "");
  }

  /** A prescriber looks at the flags, or somebody else tries to. */
  String seeFlags(SplittableRandom random) {
    Account who = random.nextInt(3) == 0 ? House.EDUCATOR : House.PRESCRIBER;
    Reading<Long> read =
        house.lifting.seeFlags(who, house.course(), house.file().basis(), "looked at");
    if (who.equals(House.EDUCATOR)) {
      actor.judge.look(Law.PRESCRIBER_ONLY, true);
      if (read.found().isPresent()) {
        actor.judge.fail(Law.PRESCRIBER_ONLY, "an educator has seen the flags for a prescriber");
      }
    }
    read.found().ifPresent(number -> ledger.watch.seen = number);
    return who.fullName() + " has seen the flags" + Actor.outcome(read);
  }

  /** Entries are found to be changed, or a sound record is put back. */
  String toggleSoundness(Reporter reporter) {
    boolean breaks = ledger.watch.isSound;
    ledger.watch.isSound = !breaks;
    house.memory.setSound(!breaks);
    if (!breaks) {
      return "a sound record is put back";
    }
    int told = ledger.told.size();
    Optional<String> report = reporter.plain();
    if (report.isPresent()) {
      actor.judge.look(Law.UNSOUND_TOLD, true);
      if (ledger.told.size() == told) {
        actor.judge.fail(Law.UNSOUND_TOLD, "a report was refused");
      }
    }
    return "an entry is found to be changed" + report.map(words -> "; " + words).orElse("");
  }

  /** He left while it was firm and is handed by name to whoever is on call. */
  String handOver() {
    Reading<Long> read =
        house
            .room
            .handOver()
            .handOver(
                House.EDUCATOR,
                house.course(),
                new HandOverDraft(
                    House.ON_CALL.id().text(),
                    "2",
                    Minutes.date(actor.now),
                    Minutes.time(actor.now),
                    Occurrence.NOT_SAID,
                    "no answer"));
    if (read.found().isPresent()) {
      String report = ((HandedOver) house.memory.lastEntry().fact()).erection().text();
      ledger.told.stream()
          .filter(one -> one.id.equals(report))
          .forEach(one -> ledger.watch.handed.add(ledger.beganAt(one)));
    }
    return "educator hands him to whoever is on call" + Actor.outcome(read);
  }

  /** The day of the room ends only when nobody can be overlooked. */
  String closeDay() {
    List<Told> left = ledger.leftWhileFirm();
    boolean isOpen = !left.isEmpty() || !ledger.watched.isEmpty();
    boolean isClosed = house.room.closeDay(House.EDUCATOR).found().isPresent();
    actor.judge.look(Law.DAY_STAYS_OPEN, isOpen);
    if (isOpen && isClosed) {
      actor.judge.fail(
          Law.DAY_STAYS_OPEN,
          left.isEmpty() ? "under observation" : "left while firm: " + left.getFirst().words());
    }
    return "educator closes the day" + (isClosed ? "" : ": refused");
  }

  /** Whoever brought a history in takes it back. */
  String undo() {
    List<Long> undone = house.memory.undoPast(house.now());
    for (Told one : ledger.told) {
      if (one.id.isEmpty() && undone.contains(one.entry)) {
        one.withdrawn = true;
      }
    }
    return undone.isEmpty() ? "" : "what was brought in from before is taken back";
  }
}
