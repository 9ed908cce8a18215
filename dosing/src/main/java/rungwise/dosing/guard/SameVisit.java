package rungwise.dosing.guard;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Question;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.TimeSpan;

/** Whether the signed rule for a second dose in the same visit lets one follow now. */
public final class SameVisit {

  private SameVisit() {}

  /** The first dose of the visit, if a second one may follow it at the question's instant. */
  public static Optional<Injection> firstDose(Question question) {
    List<Injection> today = question.history().within(TimeGuards.DAY, question.now());
    if (today.size() != 1 || !question.history().observing().isEmpty()) {
      return Optional.empty();
    }
    Injection first = today.getFirst();
    return question
        .protocol()
        .sameVisit()
        .filter(rule -> first.place() == Place.CLINIC)
        .filter(rule -> first.preparation().isSameAs(question.preparation()))
        .filter(rule -> !TimeSpan.between(first.at(), question.now()).isMoreThan(rule.within()))
        .filter(rule -> isPoorEnough(rule, first, question))
        .map(rule -> first);
  }

  private static boolean isPoorEnough(Protocol.SameVisit rule, Injection first, Question question) {
    if (first.forbidsHigherDose() || first.grade().isUseful()) {
      return false;
    }
    if (first.grade() == Grade.NONE) {
      return rule.afterNone();
    }
    return rule.afterPartialUpTo()
        .flatMap(most -> most.in(question.preparation()))
        .filter(most -> ExactVolume.of(first.drawn()).compareTo(most) <= 0)
        .isPresent();
  }
}
