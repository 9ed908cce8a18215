package rungwise.checks.adversary.law;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.ReportFlag;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.GuardRule;
import rungwise.quantities.Volume;

/**
 * The product's answers at a minute beside what was said until then.
 *
 * @param rungs the schedule, in microlitres
 * @param flags what a prescriber is to look at
 */
public record Scene(
    Ledger ledger,
    long minute,
    Advice advice,
    Clearance may,
    Optional<Clearance> next,
    List<Long> rungs,
    List<ReportFlag> flags) {

  public static Scene of(Ledger ledger, long minute, CourseState state) {
    Advice advice = state.advice();
    return new Scene(
        ledger,
        minute,
        advice,
        state.mayInject(),
        state.mayTakeNextStep(),
        advice.steps().stream().map(step -> step.volume().microlitres()).toList(),
        state.flags());
  }

  public Mix mix() {
    return ledger.plan().mix();
  }

  public boolean allows(long microlitres) {
    return advice.isAllowed(Volume.ofMicrolitres(microlitres));
  }

  /** What is proposed; 0 where nothing is. */
  public long proposed() {
    return advice.decision().proposed().map(Volume::microlitres).orElse(0L);
  }

  public boolean clear() {
    return may.isClear();
  }

  public boolean clearAtHome() {
    return clear() && ledger.order().filter(Ledger.Signed::atHome).isPresent();
  }

  /** Whether the product knows of no dose in force. */
  public boolean hasNoOrder() {
    return may.verdicts().stream().anyMatch(one -> one.rule() == GuardRule.NO_ORDER);
  }

  public boolean nextClear() {
    return next.filter(Clearance::isClear).isPresent();
  }

  /** Whether any dose at all may be signed, is proposed or may be injected. */
  public boolean leadsAnywhere() {
    return clear() || nextClear() || proposed() > 0 || rungs.stream().anyMatch(this::allows);
  }

  /** Whether the rule is said of that step. */
  public boolean says(long microlitres, GuardRule rule) {
    return advice.verdictsOn(Volume.ofMicrolitres(microlitres)).stream()
        .anyMatch(verdict -> verdict.rule() == rule);
  }

  /** How many emergencies the product tells of. */
  public long emergenciesTold() {
    return advice.courseVerdicts().stream()
        .filter(verdict -> verdict.rule() == GuardRule.EMERGENCY_OPEN)
        .count();
  }

  /** The step above a volume; without limit where there is none. */
  public long above(long microlitres) {
    return rungs.stream().filter(rung -> rung > microlitres).findFirst().orElse(Told.NO_END);
  }

  public boolean overrode(GuardRule rule) {
    return ledger.order().filter(one -> one.overridden().contains(rule.name())).isPresent();
  }

  /**
   * The same, at a signature after an injection was first reported: an override is bound to what it
   * has read.
   */
  public boolean overrodeAfter(GuardRule rule, Told report) {
    return overrode(rule)
        && ledger.order().filter(one -> one.entry() > ledger.beganAt(report)).isPresent();
  }

  /** Whether it was overridden until a day that is not over. */
  public boolean lifted(GuardRule rule) {
    return overrode(rule) && ledger.order().filter(one -> minute < one.until()).isPresent();
  }

  /** The same, for the vial that is in hand. */
  public boolean overrodeFor(GuardRule rule) {
    String vial = ledger.vial().map(Ledger.Vial::root).orElse("");
    return overrode(rule) && ledger.order().filter(one -> one.vial().equals(vial)).isPresent();
  }

  public String words() {
    return "advice "
        + advice.decision().key()
        + " "
        + advice.proposal().reasons().getFirst().rule()
        + ", allowed "
        + rungs.stream().filter(this::allows).toList()
        + " of "
        + rungs
        + ", now "
        + may.blocks().stream().map(verdict -> verdict.rule()).toList()
        + (clear() ? " CLEAR" : "")
        + (nextClear() ? " NEXT CLEAR" : "");
  }
}
