package rungwise.dosing.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Before.TakenOver;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.ladder.Beginning;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * The guards of a man who was taken over from elsewhere. A dose that was only told bounds the first
 * one here, component by component, until one with that component was watched here.
 */
final class TakenOverGuards {

  private TakenOverGuards() {}

  /** What speaks against a volume, with what was injected here within the day. */
  static List<Verdict> ofTheDose(Question question, Volume volume) {
    var verdicts = new ArrayList<Verdict>();
    for (TakenOver one : question.history().before().elsewhere().takenOver()) {
      for (Ingredient mine : question.preparation().ingredients()) {
        above(question, volume, one, mine).ifPresent(verdicts::add);
      }
    }
    return verdicts;
  }

  private static Optional<Verdict> above(
      Question question, Volume volume, TakenOver told, Ingredient mine) {
    Beginning.Held part = told.part();
    Mass sum = today(question, mine.component(), mine.in(volume));
    return part.of(mine.component())
        .filter(sum::isMoreThan)
        .filter(most -> !isAnswered(question, told, mine.component()))
        .map(
            most ->
                Verdict.of(
                    GuardRule.ABOVE_TOLD,
                    Fact.said("told from elsewhere", told.told().held()),
                    Fact.said("a first dose here may hold", part),
                    Fact.said("percent of it", told.percent()),
                    Fact.said("this would be", mine.component().token() + " " + in(sum, mine))));
  }

  private static String in(Mass sum, Ingredient mine) {
    return sum.in(mine.component().unit());
  }

  /** What was injected here within the day and this: both act together. */
  private static Mass today(Question question, Component component, Mass asked) {
    return question.history().injections().stream()
        .filter(one -> TimeGuards.isWithinADay(one.at(), question.now()))
        .flatMap(
            one ->
                one
                    .preparation()
                    .ingredient(component)
                    .map(theirs -> theirs.in(one.drawn()))
                    .stream())
        .reduce(asked, Mass::plus);
  }

  /** A second dose within the day is no later one. */
  private static boolean isAnswered(Question question, TakenOver told, Component component) {
    return question.history().injections().stream()
        .filter(told::isAnsweredBy)
        .filter(one -> !TimeGuards.isWithinADay(one.at(), question.now()))
        .anyMatch(one -> one.preparation().ingredient(component).isPresent());
  }

  /** What forbids injecting at home. */
  static List<Verdict> forHome(Question question) {
    List<Injection> same = question.history().of(question.preparation());
    return question.history().before().elsewhere().takenOver().stream()
        .filter(told -> same.stream().noneMatch(told::isAnsweredBy))
        .map(
            told ->
                Verdict.of(
                    GuardRule.NOT_WATCHED_SINCE_TOLD,
                    Fact.said("told from elsewhere", told.told().held())))
        .limit(1)
        .toList();
  }
}
