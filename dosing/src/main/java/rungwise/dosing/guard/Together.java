package rungwise.dosing.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * A dose with everything that was injected less than a day from it: both act together. No text
 * gives a limit for the sum; that the limits of one dose hold for it too is an assumption of ours.
 *
 * @param other what was injected within the day
 */
record Together(Question question, List<Injection> other, Volume volume) {

  Together {
    other = List.copyOf(other);
  }

  static Together of(Question question, Volume volume) {
    return new Together(question, TimeGuards.around(question), volume);
  }

  /** What the sum passes that one dose may hold. */
  static List<Verdict> ask(Question question, Volume volume) {
    Together all = of(question, volume);
    return all.other.isEmpty() ? List.of() : all.ask();
  }

  private List<Verdict> ask() {
    var verdicts = new ArrayList<Verdict>();
    Preparation preparation = question.preparation();
    if (ofTheSame().isMoreThan(question.ladder().ceiling())) {
      verdicts.add(verdict(Fact.said("maximum volume", question.ladder().ceiling())));
    }
    for (Ingredient ingredient : preparation.ingredients()) {
      ingredient
          .limit()
          .filter(most -> sumOf(ingredient).isMoreThan(most))
          .map(most -> Fact.said("limit", most.in(ingredient.component().unit())))
          .ifPresent(fact -> verdicts.add(verdict(fact)));
    }
    for (Protocol.ComponentLimit limit : question.protocol().componentLimits()) {
      preparation
          .ingredient(limit.component())
          .filter(ingredient -> sumOf(ingredient).isMoreThan(limit.most()))
          .ifPresent(
              ingredient -> verdicts.add(verdict(Fact.said("limit of the protocol", limit))));
    }
    return verdicts;
  }

  private Verdict verdict(Fact limit) {
    return Verdict.of(GuardRule.TOGETHER_ABOVE_LIMIT, Fact.said("both together", words()), limit);
  }

  /** The volume of this preparation in all. */
  private Volume ofTheSame() {
    return other.stream()
        .filter(one -> one.preparation().isSameAs(question.preparation()))
        .map(Injection::drawn)
        .reduce(volume, Volume::plus);
  }

  private Mass sumOf(Ingredient ingredient) {
    return other.stream()
        .flatMap(
            one ->
                one
                    .preparation()
                    .ingredient(ingredient.component())
                    .map(theirs -> theirs.in(one.drawn()))
                    .stream())
        .reduce(ingredient.in(volume), Mass::plus);
  }

  /** "0.37 mL: alprostadil 7.4 mcg"; the volume only where all of it is of one preparation. */
  String words() {
    Preparation preparation = question.preparation();
    boolean isOfOne = other.stream().allMatch(one -> one.preparation().isSameAs(preparation));
    String content =
        preparation.ingredients().stream()
            .map(one -> one.component().token() + " " + sumOf(one).in(one.component().unit()))
            .collect(Collectors.joining(", "));
    return isOfOne ? ofTheSame() + ": " + content : content;
  }
}
