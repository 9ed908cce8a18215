package rungwise.checks.adversary;

import java.util.List;
import java.util.SplittableRandom;
import rungwise.checks.adversary.law.Call;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.clinic.call.RescueDraft;
import rungwise.clinic.call.RescueDraft.What;
import rungwise.clinic.call.RescueFields;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.standing.CourseState;
import rungwise.quantities.Reading;

/**
 * Rescues with phenylephrine: doses too soon, too large and of nobody knows how much, late and
 * struck, with and without a call.
 */
final class Rescuer {

  private static final long[] AGO = {0, 1, 2, 3, 60, 61, 700};
  private static final String[] DOSES = {"100 mcg", "200 mcg", "500 mcg", "5 mg", "", "200"};
  private static final String[] SIDES = {"LEFT", "RIGHT", "NOT_KNOWN", RescueDraft.EACH};
  private static final List<What> EVERYTHING = List.of(What.values());

  private final Actor actor;
  private final House house;
  private final Ledger ledger;

  Rescuer(Actor actor) {
    this.actor = actor;
    this.house = actor.house;
    this.ledger = actor.ledger;
  }

  String rescue(SplittableRandom random) {
    What what = EVERYTHING.get(random.nextInt(EVERYTHING.size()));
    long at = actor.now - AGO[random.nextInt(AGO.length)];
    RescueDraft draft = draft(what, at, random);
    CourseState before = state();
    Reading<Long> read =
        house
            .rescues()
            .write(random.nextBoolean() ? House.EDUCATOR : House.ON_CALL, house.course(), draft);
    if (read.found().isPresent()) {
      written(what, draft.text(RescueDraft.ENTRY), before.file().basis());
    }
    requireNothingOpened(what, before, state());
    return "in a rescue: " + what + " at " + Minutes.local(at) + Actor.outcome(read);
  }

  private RescueDraft draft(What what, long at, SplittableRandom random) {
    List<Written<RescueWritten>> all = house.file().everWritten(RescueWritten.class);
    String entry = all.isEmpty() ? "" : all.get(random.nextInt(all.size())).entry().id().text();
    return RescueDraft.of(what)
        .with(RescueDraft.DATE, Minutes.date(at).toString())
        .with(RescueDraft.TIME, Minutes.time(at))
        .with(RescueFields.DOSE, DOSES[random.nextInt(DOSES.length)])
        .with(RescueDraft.SIDE, SIDES[random.nextInt(SIDES.length)])
        .with(RescueDraft.SYSTOLIC, "150")
        .with(RescueDraft.DIASTOLIC, "90")
        .with(RescueDraft.PULSE, "60")
        .with(RescueFields.OXYGEN, "25 mmHg")
        .with(RescueFields.CARBON_DIOXIDE, "65 mmHg")
        .with(RescueFields.PH, "7.2")
        .with(RescueDraft.ENTRY, entry)
        .with(RescueDraft.WORDS, "as told");
  }

  private void written(What what, String entry, long before) {
    Call call = ledger.watch.call;
    switch (what) {
      case GIVEN ->
          house.file().everWritten(RescueWritten.class).stream()
              .filter(one -> one.entry().number() > before)
              .forEach(one -> call.given(one.entry().id().text(), one.entry().number(), actor.now));
      case MEASURED, GAS, PREPARE, TICK -> call.touched(actor.now);
      case STRIKE -> call.undo(entry);
    }
  }

  private CourseState state() {
    return house.titration.find(house.course()).orElseThrow();
  }

  /** The law: a rescue is told to no fold, so that it ends no emergency and opens no volume. */
  private static void requireNothingOpened(What what, CourseState before, CourseState after) {
    boolean isLower = OpenErections.of(after).size() < OpenErections.of(before).size();
    boolean isAnother =
        !after.question().history().injections().equals(before.question().history().injections());
    if (isLower || isAnother) {
      throw new AssertionError("the law is broken: a rescue lowers or opens, by " + what);
    }
  }
}
