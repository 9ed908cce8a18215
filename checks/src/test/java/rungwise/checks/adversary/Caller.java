package rungwise.checks.adversary;

import java.util.List;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Call;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.clinic.call.CallDraft;
import rungwise.clinic.call.CallDraft.What;
import rungwise.clinic.call.SaidTime;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.quantities.Reading;

/** Calls about a long erection: in any order, late, twice, and with what cannot be true. */
final class Caller {

  private static final long[] AGO = {0, 1, 30, 119, 120, 239, 240, 241, 700, 1_000};

  private static final List<What> EVERYTHING = List.of(What.values());

  private final Actor actor;
  private final House house;
  private final Ledger ledger;
  private final Rescuer rescuer;

  Caller(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.ledger = actor.ledger;
    this.rescuer = new Rescuer(actor);
  }

  String call(SplittableRandom random) {
    return random.nextInt(3) == 0 ? rescuer.rescue(random) : say(random);
  }

  private String say(SplittableRandom random) {
    What what = EVERYTHING.get(random.nextInt(EVERYTHING.size()));
    Call call = ledger.watch.call;
    long at = actor.now - AGO[random.nextInt(AGO.length)];
    CallDraft draft =
        CallDraft.of(what)
            .at(said(at))
            .picking(picked(what, call, random), HandedOnFor.NOT_REACHED.name(), "as told")
            .to("Sample Hospital", "the doctor on duty");
    Reading<Long> read =
        house.calls.write(
            random.nextBoolean() ? House.EDUCATOR : House.ON_CALL, house.course(), draft);
    if (read.found().isPresent()) {
      written(what, at, draft.picked());
    }
    return "in a call: " + what + " at " + Minutes.local(at) + Actor.outcome(read);
  }

  /** As somebody on the line says it: a time of today, or of yesterday. */
  private SaidTime said(long minute) {
    boolean isToday = Minutes.date(minute).equals(Minutes.date(actor.now));
    return new SaidTime(isToday ? SaidTime.TODAY : SaidTime.YESTERDAY, Minutes.time(minute));
  }

  private static String picked(What what, Call call, SplittableRandom random) {
    return switch (what) {
      case STRIKE ->
          call.starts.isEmpty() ? "" : call.starts.get(random.nextInt(call.starts.size())).entry();
      case HAND_ON -> House.PRESCRIBER.id().text();
      case DONE -> "NOTHING_MORE";
      default -> "";
    };
  }

  private void written(What what, long at, String picked) {
    Call call = ledger.watch.call;
    switch (what) {
      case BEGAN -> {
        call.open();
        call.starts.add(new Call.Start(entry(), at));
      }
      case NOT_KNOWN -> {
        call.open();
        call.starts.add(new Call.Start(entry(), -1));
      }
      case FIRM -> call.open();
      case STRIKE -> call.strike(picked);
      case SOFT -> call.end(number(), at, actor.now);
      case HANDED_TO -> call.end(number(), -1, actor.now);
      case DONE, HAND_ON -> {}
    }
  }

  private CourseFile.Written<CallWritten> last() {
    return house.file().everWritten(CallWritten.class).getLast();
  }

  private String entry() {
    return last().entry().id().text();
  }

  private long number() {
    return last().entry().number();
  }
}
