package rungwise.dosing.guard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.Circumstances.Unfinished;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Observing;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Finding;
import rungwise.dosing.screening.Screening;

/** The guards that ask about the man, whatever the dose. */
public final class CourseGuards {

  private CourseGuards() {}

  /** What speaks against every dose, the gravest first. */
  public static List<Verdict> ask(Question question) {
    var verdicts = new ArrayList<Verdict>();
    for (Injection one : question.history().openEmergencies()) {
      verdicts.add(Verdict.of(GuardRule.EMERGENCY_OPEN, DoseGuards.factsOf(question, one)));
    }
    History history = question.history();
    for (Before.NobodyKnows one : history.before().openEmergencies(history.reviews())) {
      verdicts.add(Verdict.of(GuardRule.EMERGENCY_OPEN, factsOf(one)));
    }
    for (Unfinished one : question.circumstances().unfinished()) {
      verdicts.add(unfinished(one));
    }
    verdicts.addAll(UpkeepGuards.ofTheCourse(question));
    for (Before.Unmapped one : question.history().before().unmapped()) {
      verdicts.add(
          Verdict.of(
              GuardRule.PAST_LONG,
              Fact.said("volume", one.drawn()),
              Fact.said("response", one.responseWords())));
    }
    if (question.history().before().isOpen()) {
      verdicts.add(Verdict.of(GuardRule.PAST_OPEN));
    }
    screening(question, verdicts);
    protocol(question).ifPresent(verdicts::add);
    for (Observing one : question.history().observing()) {
      verdicts.add(
          Verdict.of(
              GuardRule.UNDER_OBSERVATION,
              new Fact.Happened("injected", one.at()),
              Fact.said("drawn", one.drawn())));
    }
    return List.copyOf(verdicts);
  }

  /** A protocol that was signed before it had to name its composition is for no preparation. */
  private static Optional<Verdict> protocol(Question question) {
    Protocol protocol = question.protocol();
    if (protocol.isFor(question.preparation())) {
      return Optional.empty();
    }
    return Optional.of(
        Verdict.of(
            GuardRule.PROTOCOL_NOT_FOR,
            Fact.said("protocol", protocol.title()),
            Fact.said("written for", protocol.writtenFor()),
            Fact.said("preparation", question.preparation().composition())));
  }

  private static Verdict unfinished(Unfinished worry) {
    var facts = new ArrayList<Fact>();
    facts.add(new Fact.Happened("told", worry.told()));
    worry.injectedAt().ifPresent(at -> facts.add(new Fact.Happened("injected", at)));
    return new Verdict(GuardRule.REPORT_UNFINISHED, facts, GuardRule.REPORT_UNFINISHED.clears());
  }

  private static void screening(Question question, List<Verdict> verdicts) {
    Screening screening = question.screening();
    Preparation preparation = question.preparation();
    for (Condition condition : screening.present(Finding.CONTRAINDICATION, preparation)) {
      verdicts.add(about(GuardRule.CONTRAINDICATED, condition));
    }
    List<Condition> open = screening.open(preparation);
    if (!open.isEmpty()) {
      String words = String.join("; ", open.stream().map(Condition::words).toList());
      verdicts.add(Verdict.of(GuardRule.SCREENING_OPEN, Fact.said("not known", words)));
    }
    for (Condition condition : screening.undecided(preparation)) {
      verdicts.add(about(GuardRule.DECISION_MISSING, condition));
    }
    expired(question).ifPresent(verdicts::add);
    for (Condition condition : screening.present(Finding.CAUTION, preparation)) {
      verdicts.add(caution(question, condition));
    }
  }

  private static Verdict about(GuardRule rule, Condition condition) {
    return Verdict.of(
            rule,
            Fact.said(Fact.CONDITION, condition.words()),
            Fact.said(Fact.WHAT_TO_DO, condition.action()))
        .citing(condition.source());
  }

  private static Verdict caution(Question question, Condition condition) {
    if (condition != Condition.PDE5_INHIBITOR) {
      return about(GuardRule.CAUTION, condition);
    }
    var hours = question.protocol().limits().pde5Hours();
    return Verdict.of(
            GuardRule.CAUTION,
            Fact.said(Fact.CONDITION, condition.words()),
            Fact.said(Fact.WHAT_TO_DO, condition.action()),
            Fact.said("the clinic's own hours between the two", hours.value()))
        .citing(hours.source());
  }

  /** Whether an answer of the screening is too old to hold, by the months of the protocol. */
  public static boolean isOld(Question question, Instant answered) {
    int months = question.protocol().limits().screeningMonths().value();
    return !UpkeepGuards.monthsAfter(answered, months).isAfter(question.now());
  }

  private static Optional<Verdict> expired(Question question) {
    int months = question.protocol().limits().screeningMonths().value();
    return question
        .screening()
        .oldest(question.preparation())
        .filter(oldest -> isOld(question, oldest))
        .map(
            oldest ->
                Verdict.of(
                    GuardRule.SCREENING_EXPIRED,
                    new Fact.Happened("oldest answer", oldest),
                    Fact.said("months for which an answer holds", months)));
  }

  /** What came onto the record after a dose was signed, so that it needs a new signature. */
  public static List<Verdict> askSince(Question question, SignedDose signed) {
    return question.circumstances().found().filter(found -> found > signed.entry()).stream()
        .map(found -> Verdict.of(GuardRule.SIGNED_BEFORE_FINDING))
        .toList();
  }

  /** What was never shown or agreed is a hard stop; what was and has run out is a hold. */
  private static List<Verdict> readiness(Question question) {
    var verdicts = new ArrayList<Verdict>();
    Set<Readiness> expired = question.circumstances().expired();
    var everOnRecord = new HashSet<>(question.readiness());
    everOnRecord.addAll(expired);
    String missing = Readiness.missing(question.preparation(), everOnRecord);
    if (!missing.isEmpty()) {
      verdicts.add(Verdict.of(GuardRule.HOME_NOT_READY, Fact.said("not on record", missing)));
    }
    var unexpired = EnumSet.allOf(Readiness.class);
    unexpired.removeAll(expired);
    String old = Readiness.missing(question.preparation(), unexpired);
    if (!old.isEmpty()) {
      var facts = new ArrayList<Fact>();
      facts.add(Fact.said("has run out", old));
      question
          .protocol()
          .home()
          .readinessMonths()
          .map(months -> Fact.said("months for which it holds", months.value()))
          .ifPresent(facts::add);
      verdicts.add(Verdict.of(GuardRule.READINESS_EXPIRED, facts.toArray(Fact[]::new)));
    }
    return verdicts;
  }

  /** What forbids injecting at home. */
  public static List<Verdict> askForHome(Question question) {
    var verdicts = new ArrayList<Verdict>();
    verdicts.addAll(readiness(question));
    List<Injection> same = question.history().sinceChangeTo(question.preparation());
    if (same.stream().noneMatch(Injection::provesInClinic)) {
      verdicts.add(
          Verdict.of(GuardRule.FIRST_IN_CLINIC, Fact.said("preparation", question.preparation())));
    }
    verdicts.addAll(TakenOverGuards.forHome(question));
    afterEmergency(question).ifPresent(verdicts::add);
    question
        .last()
        .filter(last -> !question.history().sameStayBefore(last).isEmpty())
        .map(
            last ->
                Verdict.of(
                    GuardRule.PAIR_NOT_CREDITED,
                    new Fact.Happened("the second dose", last.at()),
                    Fact.said("injected in that visit in all", question.history().cumulative(last)),
                    Fact.said("the second dose alone", last.drawn())))
        .ifPresent(verdicts::add);
    verdicts.addAll(UpkeepGuards.forHome(question));
    return List.copyOf(verdicts);
  }

  /** The dose is found again in the clinic after an emergency, in a man who was examined. */
  private static Optional<Verdict> afterEmergency(Question question) {
    History history = question.history();
    return history
        .lastReviewed()
        .flatMap(
            one ->
                afterEmergency(
                    question, DoseGuards.factsOf(question, one), history.isTestedSince(one)))
        .or(
            () ->
                question
                    .lastOfNobodyKnowsWhat()
                    .flatMap(
                        one -> afterEmergency(question, factsOf(one), one.isTestedSince(history))));
  }

  private static Fact[] factsOf(Before.NobodyKnows one) {
    return new Fact[] {
      new Fact.Happened("injected before", one.at()),
      Fact.said("of", "nobody knows what"),
      Fact.said("response", one.responseWords())
    };
  }

  private static Optional<Verdict> afterEmergency(
      Question question, Fact[] emergency, boolean isTested) {
    var facts = new ArrayList<>(List.of(emergency));
    int known = facts.size();
    if (question.notExaminedSince().isPresent()) {
      facts.add(Fact.said("not on record since", "an examination"));
    }
    if (!isTested) {
      facts.add(Fact.said("not on record since", "a dose in the clinic, over within the hour"));
    }
    return facts.size() == known
        ? Optional.empty()
        : Optional.of(Verdict.of(GuardRule.AFTER_EMERGENCY, facts.toArray(Fact[]::new)));
  }
}
