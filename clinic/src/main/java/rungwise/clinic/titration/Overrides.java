package rungwise.clinic.titration;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.Dosing;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.guard.Overriding;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Place;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * What a signature would override: of the holds that are raised on its dose now, those that it
 * names, each bound to what it read.
 */
final class Overrides {

  private final SignDraft draft;
  private final CourseState state;
  private final List<Verdict> raised;
  private final ClinicTime time;
  private final Reading<LocalDate> until;

  Overrides(SignDraft draft, CourseState state, Volume volume, ClinicTime time) {
    this.draft = draft;
    this.state = state;
    this.raised = Dosing.raisedBy(state.question(), volume, draft.place());
    this.time = time;
    this.until = ClinicTime.readDate(draft.until());
  }

  /** The holds with what they read. */
  Set<OverriddenHold> found() {
    return raised.stream()
        .filter(verdict -> draft.overridden().contains(verdict.rule()))
        .map(verdict -> OverriddenHold.of(verdict, untilOf(verdict.rule())))
        .collect(Collectors.toUnmodifiableSet());
  }

  private Optional<Instant> untilOf(GuardRule rule) {
    return rule.overriding() == Overriding.UNTIL_A_DATE
        ? until.found().map(day -> day.plusDays(1).atStartOfDay(time.zone()).toInstant())
        : Optional.empty();
  }

  /** Why they cannot be overridden. */
  List<Fault> faults() {
    var faults = new ArrayList<Fault>();
    List<GuardRule> rules = draft.overridden().stream().sorted().toList();
    if (rules.stream().anyMatch(rule -> rule.guardClass() != GuardClass.HOLD)) {
      faults.add(ofHolds("Only a hold can be overridden."));
    }
    for (GuardRule rule : rules) {
      boolean isRaised = raised.stream().anyMatch(verdict -> verdict.rule() == rule);
      if (rule.overriding() == Overriding.IN_THE_CLINIC && draft.place() == Place.HOME) {
        faults.add(ofHolds("Never overridden for home: " + rule.wording()));
      } else if (rule.guardClass() == GuardClass.HOLD && !isRaised) {
        faults.add(
            ofHolds(
                "Not on this dose now, so it is not overridden: "
                    + rule.wording()
                    + " Take the tick away."));
      }
    }
    if (rules.stream().anyMatch(rule -> rule.overriding() == Overriding.UNTIL_A_DATE)) {
      untilFault().map(text -> new Fault(SignDraft.UNTIL, text)).ifPresent(faults::add);
    }
    return faults;
  }

  private static Fault ofHolds(String text) {
    return new Fault(SignDraft.OVERRIDDEN, text);
  }

  private Optional<String> untilFault() {
    LocalDate today = time.dayOf(state.now());
    int grace = state.question().protocol().limits().graceDays().value();
    LocalDate last = today.plusDays(grace);
    boolean isWithin =
        until.found().filter(day -> !day.isBefore(today) && !day.isAfter(last)).isPresent();
    return isWithin
        ? Optional.empty()
        : Optional.of(
            "Until which day it is overridden: \""
                + draft.until()
                + "\" was given. Choose a day from "
                + ClinicTime.words(today)
                + " to "
                + ClinicTime.words(last)
                + (grace == 0 ? ": the protocol gives no grace." : ", the protocol's grace."));
  }
}
