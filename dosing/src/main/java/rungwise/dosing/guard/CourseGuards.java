package rungwise.dosing.guard;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;

/** The guards that ask about the man, whatever the dose. */
public final class CourseGuards {

  private CourseGuards() {}

  /** What forbids every dose. */
  public static List<Verdict> ask(Question question) {
    var verdicts = new ArrayList<Verdict>();
    switch (question.contraindication()) {
      case YES -> verdicts.add(Verdict.of(GuardRule.CONTRAINDICATED));
      case NOT_KNOWN -> verdicts.add(Verdict.of(GuardRule.SCREENING_OPEN));
      case NO -> {}
    }
    question.history().openEmergencies().stream()
        .map(one -> Verdict.of(GuardRule.EMERGENCY_OPEN, DoseGuards.factsOf(one)))
        .forEach(verdicts::add);
    return List.copyOf(verdicts);
  }

  /** What forbids injecting at home. */
  public static List<Verdict> askForHome(Question question) {
    String missing =
        Arrays.stream(Readiness.values())
            .filter(item -> !question.readiness().contains(item))
            .map(Readiness::words)
            .collect(Collectors.joining("; "));
    return missing.isEmpty()
        ? List.of()
        : List.of(Verdict.of(GuardRule.HOME_NOT_READY, Fact.said("not on record", missing)));
  }
}
