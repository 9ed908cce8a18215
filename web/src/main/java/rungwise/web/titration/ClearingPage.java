package rungwise.web.titration;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.guard.GuardRule;

/** The page of a course on which what clears a verdict is written down. */
enum ClearingPage {
  SCREENING(
      "/screening",
      "Open the screening",
      Set.of(
          GuardRule.CONTRAINDICATED,
          GuardRule.SCREENING_OPEN,
          GuardRule.DECISION_MISSING,
          GuardRule.SCREENING_EXPIRED)),
  EXAMINATION(
      "/screening#examination",
      "Write down an examination",
      Set.of(
          GuardRule.SIGNED_BEFORE_FINDING,
          GuardRule.EXAMINATION_OVERDUE,
          GuardRule.EXAMINATION_LONG_OVERDUE)),
  BEFORE_HOME(
      "/before-home",
      "Open what comes before home use",
      Set.of(GuardRule.HOME_NOT_READY, GuardRule.READINESS_EXPIRED)),
  VIAL(
      "/vial",
      "Open his vials",
      Set.of(
          GuardRule.NO_VIAL,
          GuardRule.VIAL_DIFFERS,
          GuardRule.VIAL_PAST_DATE,
          GuardRule.VIAL_OPEN_TOO_LONG,
          GuardRule.VIAL_GONE,
          GuardRule.VIAL_TO_BE_JUDGED,
          GuardRule.IN_USE_NOT_STATED)),
  VISIT("/visit", "Open the observation", Set.of(GuardRule.UNDER_OBSERVATION)),
  REPORT("/report", "Enter a report", Set.of(GuardRule.PAST_OPEN, GuardRule.REPORT_UNFINISHED));

  private final String path;
  private final String word;
  private final Set<GuardRule> rules;

  ClearingPage(String path, String word, Set<GuardRule> rules) {
    this.path = path;
    this.word = word;
    this.rules = rules;
  }

  /** The page for a rule; none where a signature, time or another dose clears it. */
  static Optional<ClearingPage> of(GuardRule rule) {
    return Arrays.stream(values()).filter(page -> page.rules.contains(rule)).findFirst();
  }

  /** Behind the address of the course. */
  String path() {
    return path;
  }

  String word() {
    return word;
  }
}
