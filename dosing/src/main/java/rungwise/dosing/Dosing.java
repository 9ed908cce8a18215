package rungwise.dosing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.choice.ByRule;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.choice.Wanted;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Advice.StepVerdicts;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.decision.ReasonSources;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OwnSources;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.guard.TimeGuards;
import rungwise.dosing.guard.Turns;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.guard.VialGuards;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.PartialRow;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.quantities.Volume;

/**
 * The public door of the engine. Guards are asked, a way to choose proposes, and the guards are
 * asked again; whatever they forbid is never proposed.
 */
public final class Dosing {

  /** Stored with every decision. A change that alters a decision raises it. */
  public static final String ENGINE_VERSION = "6";

  private Dosing() {}

  /** What to do next by rule alone, with every reason. */
  public static Advice advise(Question question) {
    return advise(question, new ByRule());
  }

  /** What to do next by a way to choose, with every reason. */
  public static Advice advise(Question question, Choice choice) {
    List<StepVerdicts> steps =
        question.ladder().rungs().stream()
            .map(
                rung ->
                    new StepVerdicts(rung, OwnSources.of(question, DoseGuards.ask(question, rung))))
            .toList();
    List<Verdict> time = TimeGuards.ask(question);
    return new Advice(
        ReasonSources.of(question, guarded(choice.choose(question), steps).named(question.last())),
        OwnSources.of(question, CourseGuards.ask(question)),
        steps,
        OwnSources.of(question, time),
        OwnSources.of(question, CourseGuards.askForHome(question)),
        Clearance.latest(time),
        choice.key(),
        question.protocol().key(),
        ENGINE_VERSION);
  }

  /** Keeps what the guards allow; else the next lower step that they allow. */
  private static Wanted guarded(Wanted wanted, List<StepVerdicts> steps) {
    Optional<Volume> volume = wanted.proposed();
    if (volume.isEmpty() || isAllowed(steps, volume.get())) {
      return wanted;
    }
    List<Fact> facts = wanted.reasons().getFirst().facts();
    return steps.stream()
        .filter(StepVerdicts::isAllowed)
        .map(StepVerdicts::volume)
        .filter(volume.get()::isMoreThan)
        .reduce((low, high) -> high)
        .map(lower -> wanted.lowered(lower, new Reason(TitrationRule.GUARD_FORBIDS, facts)))
        .orElseGet(
            () ->
                wanted.without(
                    new Decision.Stop(), new Reason(TitrationRule.NOTHING_ALLOWED, facts)));
  }

  private static boolean isAllowed(List<StepVerdicts> steps, Volume volume) {
    return steps.stream().anyMatch(step -> step.volume().equals(volume) && step.isAllowed());
  }

  /**
   * Whether he may inject at the question's instant.
   *
   * @param signed the dose in force, if one is; a report that came in later may have closed it
   */
  public static Clearance mayInject(Question question, Optional<SignedDose> signed) {
    return signed
        .map(dose -> new Clearance(onDose(question, dose, dose.volume(), List.of())))
        .orElseGet(() -> withoutDose(question));
  }

  /**
   * The instants at which the advice on a question, or the answer to "may he inject now?", may
   * change while nothing is written; passed ones too, in no order.
   *
   * @param signed the dose in force, if one is
   */
  public static List<Instant> turns(Question question, Optional<SignedDose> signed) {
    return Turns.of(question, signed);
  }

  private static Clearance withoutDose(Question question) {
    var verdicts = new ArrayList<>(CourseGuards.ask(question));
    verdicts.add(new Verdict(GuardRule.NO_ORDER, List.of(), GuardRule.NO_ORDER.clears()));
    verdicts.addAll(TimeGuards.ask(question));
    verdicts.addAll(VialGuards.ask(question));
    return new Clearance(OwnSources.of(question, verdicts));
  }

  /**
   * Everything that speaks against a dose at a place at the question's instant: what a prescriber
   * reads who is to sign it.
   */
  public static List<Verdict> raisedBy(Question question, Volume volume, Place place) {
    var verdicts = new ArrayList<>(CourseGuards.ask(question));
    verdicts.addAll(ofTheDose(question, volume, place));
    return OwnSources.of(question, verdicts);
  }

  private static List<Verdict> ofTheDose(Question question, Volume volume, Place place) {
    boolean isInClinic = place == Place.CLINIC;
    var verdicts = new ArrayList<>(DoseGuards.ask(question, volume));
    if (!isInClinic) {
      verdicts.addAll(CourseGuards.askForHome(question));
    }
    verdicts.addAll(TimeGuards.ask(question, volume, place));
    verdicts.addAll(VialGuards.ask(question));
    return verdicts;
  }

  /**
   * Whether the signed next step may be injected at the question's instant instead of the dose.
   *
   * @throws java.util.NoSuchElementException if none was signed
   */
  public static Clearance mayTakeNextStep(Question question, SignedDose signed) {
    boolean isDue =
        question
            .last()
            .filter(last -> last.drawn().equals(signed.volume()))
            .filter(Injection::wasTooLittle)
            .filter(last -> PartialRow.isEnough(question.history(), question.protocol()))
            .isPresent();
    List<Verdict> notYet = isDue ? List.of() : List.of(nextStepNotYet(question, signed));
    return new Clearance(onDose(question, signed, signed.nextStep().orElseThrow(), notYet));
  }

  /** What speaks against a volume that a signature let him inject, less what it overrode. */
  private static List<Verdict> onDose(
      Question question, SignedDose signed, Volume volume, List<Verdict> more) {
    var verdicts = new ArrayList<>(CourseGuards.ask(question));
    verdicts.addAll(CourseGuards.askSince(question, signed));
    verdicts.addAll(more);
    verdicts.addAll(ofTheDose(question, volume, signed.place()));
    return OwnSources.of(question, signed.less(verdicts, question.now()));
  }

  private static Verdict nextStepNotYet(Question question, SignedDose signed) {
    var facts = new ArrayList<Fact>();
    facts.add(Fact.said("signed dose", signed.volume()));
    PartialRow.of(question.history(), question.protocol())
        .ifPresent(row -> facts.add(Fact.said("partial responses in a row", row)));
    return new Verdict(GuardRule.NEXT_STEP_NOT_YET, facts, GuardRule.NEXT_STEP_NOT_YET.clears());
  }
}
