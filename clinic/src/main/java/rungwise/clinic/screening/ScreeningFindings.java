package rungwise.clinic.screening;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OwnSources;
import rungwise.dosing.history.Question;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Finding;

/** What the safety checks find in a screening, in words. */
final class ScreeningFindings {

  private static final String NOTHING = "Nothing in the screening stops him";
  private static final String NOT_KNOWN =
      "Not known: it is not known what time it is, so not whether his answers still count";
  private static final String DECIDE = "A prescriber has to decide";
  private static final int MOST_NAMED = 4;

  private final Question question;
  private final Function<Instant, String> day;
  private final List<Condition> contraindications;
  private final List<Condition> open;
  private final List<Condition> undecided;
  private final boolean isExpired;

  ScreeningFindings(Question question, Function<Instant, String> day) {
    var screening = question.screening();
    var preparation = question.preparation();
    this.question = question;
    this.day = day;
    this.contraindications = screening.present(Finding.CONTRAINDICATION, preparation);
    this.open = screening.open(preparation);
    this.undecided = screening.undecided(preparation);
    this.isExpired =
        CourseGuards.ask(question).stream()
            .anyMatch(verdict -> verdict.rule() == GuardRule.SCREENING_EXPIRED);
  }

  /** The gravest of them in one line. */
  String answer() {
    if (!contraindications.isEmpty()) {
      int more = contraindications.size() - 1;
      return "Contraindicated: "
          + inside(contraindications.getFirst())
          + (more == 0 ? "" : ", and " + more + " more");
    }
    if (!open.isEmpty()) {
      String questions = openWords();
      return question.screening().answers().isEmpty()
          ? "Not screened yet: " + questions
          : questions;
    }
    if (!undecided.isEmpty()) {
      return DECIDE;
    }
    if (question.circumstances().clock().isPresent()) {
      return NOT_KNOWN;
    }
    return isExpired
        ? "Answers are older than " + months() + " months: ask what is still true"
        : NOTHING;
  }

  /** All of them, the gravest first. */
  List<VerdictText> verdicts() {
    var verdicts = new ArrayList<VerdictText>();
    contraindications.stream()
        .map(one -> about(GuardRule.CONTRAINDICATED, "Contraindicated: ", one))
        .forEach(verdicts::add);
    if (!open.isEmpty()) {
      verdicts.add(open());
    }
    if (!undecided.isEmpty()) {
      verdicts.add(undecided());
    }
    if (isExpired) {
      verdicts.add(expired());
    }
    question.screening().present(Finding.CAUTION, question.preparation()).stream()
        .map(one -> about(GuardRule.CAUTION, "Caution: ", one))
        .forEach(verdicts::add);
    return verdicts;
  }

  private String openWords() {
    return open.size() == 1 ? "1 question open" : open.size() + " questions open";
  }

  private VerdictText open() {
    String named =
        open.size() > MOST_NAMED
            ? ""
            : ": " + open.stream().map(Condition::words).collect(Collectors.joining("; "));
    return text(
        GuardRule.SCREENING_OPEN,
        openWords() + named + ".",
        "No dose before they are answered. Not known counts as the unsafe answer.",
        source(GuardRule.SCREENING_OPEN));
  }

  private VerdictText undecided() {
    String named =
        undecided.stream().map(ScreeningFindings::inside).collect(Collectors.joining("; "));
    return text(
        GuardRule.DECISION_MISSING,
        DECIDE + ": " + named + ".",
        "No dose before each decision is written down.",
        source(GuardRule.DECISION_MISSING));
  }

  private VerdictText expired() {
    String oldest = question.screening().oldest(question.preparation()).map(day).orElseThrow();
    return text(
        GuardRule.SCREENING_EXPIRED,
        "The oldest answer is of " + oldest + ".",
        "An answer holds for " + months() + " months. Ask which are still true.",
        source(GuardRule.SCREENING_EXPIRED));
  }

  private String source(GuardRule rule) {
    return OwnSources.forPreparation(rule.source(), question.preparation()).words();
  }

  private VerdictText about(GuardRule rule, String begin, Condition condition) {
    String clinicRule = ScreeningWords.clinicRule(condition, question.protocol());
    return text(
        rule,
        begin + inside(condition) + ".",
        (condition.action() + " " + clinicRule).strip(),
        OwnSources.forPreparation(condition.source(), question.preparation()).words());
  }

  private static VerdictText text(GuardRule rule, String sentence, String next, String source) {
    return new VerdictText(rule, rule.guardClass(), sentence, next, List.of(), source);
  }

  private int months() {
    return question.protocol().limits().screeningMonths().value();
  }

  /** A condition's words in the middle of a sentence. */
  private static String inside(Condition condition) {
    String words = condition.words();
    return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }
}
