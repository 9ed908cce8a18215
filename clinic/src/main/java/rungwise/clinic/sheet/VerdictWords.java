package rungwise.clinic.sheet;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.guard.Clears;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Fact;

/** What the safety checks say of a course, in words. */
record VerdictWords(ClinicTime time, CourseState state) {

  private static final Set<String> CONDITION_FACTS = Set.of(Fact.CONDITION, Fact.WHAT_TO_DO);

  List<VerdictText> of(List<Verdict> verdicts) {
    return verdicts.stream().map(this::of).toList();
  }

  private VerdictText of(Verdict verdict) {
    GuardRule rule = verdict.rule();
    return new VerdictText(
        rule,
        rule.guardClass(),
        sentence(verdict),
        clears(verdict.clears()),
        Facts.words(verdict.facts(), time),
        verdict.source().words());
  }

  /**
   * The guard's own words; of a condition also which one it is, and what to do. Of an erection that
   * is not known to be over it is not said that it may have lasted for 4 hours before they are.
   */
  private String sentence(Verdict verdict) {
    return verdict.rule() == GuardRule.EMERGENCY_OPEN
        ? notOverYet(verdict).orElse(verdict.rule().wording())
        : withCondition(verdict);
  }

  private Optional<String> notOverYet(Verdict verdict) {
    return verdict.facts().stream()
        .filter(Fact.Happened.class::isInstance)
        .map(fact -> ((Fact.Happened) fact).at())
        .flatMap(
            at -> new OpenErectionWords(time, Objects::toString).notOverYet(state, at).stream())
        .findFirst();
  }

  private static String withCondition(Verdict verdict) {
    List<String> said =
        verdict.facts().stream()
            .filter(fact -> CONDITION_FACTS.contains(fact.what()))
            .map(fact -> ((Fact.Said) fact).value())
            .toList();
    String wording = verdict.rule().wording();
    return said.isEmpty()
        ? wording
        : wording.substring(0, wording.length() - 1) + ": " + String.join(". ", said);
  }

  private String clears(Clears clears) {
    return switch (clears) {
      case Clears.At at when !state.clock().isKnown() ->
          "It is not known whether that has cleared: by the record it does "
              + time.words(at.instant())
              + ".";
      case Clears.At at ->
          "Clears "
              + time.words(at.instant())
              + ", "
              + ClinicTime.distance(state.now(), at.instant())
              + ".";
      case Clears.When when -> "Clears when " + when.act() + ".";
      case Clears.Never never -> "";
    };
  }
}
