package rungwise.checks.adversary;

import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Told;
import rungwise.checks.adversary.law.Transfers;
import rungwise.clinic.people.Account;
import rungwise.clinic.takeover.ToldDraft;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/** Writes down what a man injects elsewhere, and opens his schedule at any part of it. */
final class Receiver {

  private static final Account[] ANYBODY = {House.EDUCATOR, House.ON_CALL, House.PRESCRIBER};
  private static final long[] LASTED = {20, 45, 60, 61, 90, 119, 120, 180, 239, 240, 300};

  private final Actor actor;
  private final House house;
  private final Transfers transfers;

  Receiver(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.transfers = actor.ledger.watch.transfers;
  }

  String transfer(SplittableRandom random) {
    return transfers.told.isEmpty() || random.nextInt(4) == 0 ? tell(random) : open(random);
  }

  private static ToldDraft told(
      Mix mix, long drawn, String day, int grade, String end, long minutes) {
    return new ToldDraft(
        mix.id,
        Volume.ofMicrolitres(drawn).millilitresText(),
        "",
        "another clinic",
        day,
        Integer.toString(grade),
        end,
        end.equals("NOT_KNOWN") ? "" : Long.toString(minutes),
        "HIS_WORD");
  }

  private String tell(SplittableRandom random) {
    Mix planned = actor.ledger.plan().mix();
    Mix mix = random.nextInt(3) > 0 ? planned : Mix.any(random);
    long drawn = 20L + random.nextInt(981);
    int way = random.nextInt(8);
    String end = way == 0 ? "NOT_KNOWN" : way == 1 ? "AT_LEAST" : "EXACTLY";
    long minutes = random.nextInt(3) > 0 ? 45 : LASTED[random.nextInt(LASTED.length)];
    long lastDay = actor.now - Ledger.DAY * random.nextInt(12);
    boolean isDayKnown = random.nextInt(8) > 0;
    Account teller = ANYBODY[random.nextInt(ANYBODY.length)];
    ToldDraft draft =
        told(mix, drawn, isDayKnown ? Minutes.date(lastDay) : "", random.nextInt(5), end, minutes);
    Reading<Long> read = house.takingOver().tell(teller, house.course(), draft);
    long nextDay = (Minutes.dayOf(lastDay) + 1) * Ledger.DAY;
    long latest = isDayKnown ? Math.min(nextDay, actor.now) : actor.now;
    read.found()
        .ifPresent(
            entry ->
                transfers.told.add(
                    new Transfers.Elsewhere(entry, latest, mix, drawn, lasted(end, minutes))));
    return "taken over on "
        + drawn
        + " uL of "
        + mix.label()
        + ", "
        + end
        + " "
        + minutes
        + " min"
        + Actor.outcome(read);
  }

  private static long lasted(String end, long minutes) {
    return switch (end) {
      case "NOT_KNOWN" -> -1;
      case "AT_LEAST" -> Told.NO_END;
      default -> minutes;
    };
  }

  private String open(SplittableRandom random) {
    Account by = random.nextInt(6) > 0 ? House.PRESCRIBER : House.EDUCATOR;
    Mix mix = actor.ledger.plan().mix();
    long half = transfers.told.getLast().drawn() / 2 / 10 * 10;
    long upTo = random.nextBoolean() ? half : 10L * (1 + random.nextInt(60));
    String text =
        actor.ledger.plan().barrel().equals("ml-1")
            ? Volume.ofMicrolitres(upTo).millilitresText()
            : Long.toString(upTo / 10);
    Reading<Long> read =
        house.takingOver().open(by, house.course(), house.file().basis(), text, "read the letter");
    transfers.triedByOthers |= by.equals(House.EDUCATOR);
    transfers.isWrongHand |= by.equals(House.EDUCATOR) && read.found().isPresent();
    read.found().ifPresent(entry -> transfers.opened.add(new Transfers.Opened(entry, mix, upTo)));
    return "opens the schedule at " + upTo + " uL" + Actor.outcome(read);
  }
}
