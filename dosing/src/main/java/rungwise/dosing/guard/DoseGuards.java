package rungwise.dosing.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.ladder.Beginning;
import rungwise.dosing.ladder.Carried;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.DrawingError;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/** The guards that ask about one volume. */
public final class DoseGuards {

  private DoseGuards() {}

  /** Everything that speaks against a volume, whether or not it is on the ladder. */
  public static List<Verdict> ask(Question question, Volume volume) {
    var verdicts = new ArrayList<Verdict>();
    Ladder ladder = question.ladder();
    limits(ladder.preparation(), ladder.ceiling(), volume, verdicts);
    protocolLimits(question, volume, verdicts);
    if (!ladder.hasRung(volume)) {
      verdicts.add(Verdict.of(GuardRule.NOT_A_STEP, Fact.said("schedule", ladder.rungs())));
    }
    measuring(ladder.barrel(), volume, verdicts);
    oneStepUp(question, volume).ifPresent(verdicts::add);
    closed(question, volume).ifPresent(verdicts::add);
    higherAfterLong(question, volume).ifPresent(verdicts::add);
    verdicts.addAll(signAnew(question, volume));
    aboveFreshStock(question, volume).ifPresent(verdicts::add);
    verdicts.addAll(TakenOverGuards.ofTheDose(question, volume));
    careAbove(question, volume).ifPresent(verdicts::add);
    verdicts.addAll(UpkeepGuards.ofTheDose(question, volume));
    return List.copyOf(verdicts);
  }

  /**
   * Everything that speaks against a step that a prescriber would sign as the one to follow, if a
   * dose does not work. It is one step above that dose, so how far it is above the last one is not
   * asked.
   */
  public static List<Verdict> askForNextStep(Question question, Volume from, Volume next) {
    var verdicts = new ArrayList<>(ask(question, next));
    verdicts.removeIf(verdict -> verdict.rule() == GuardRule.MORE_THAN_ONE_STEP_UP);
    if (!question.ladder().above(from).equals(Optional.of(next))) {
      verdicts.add(
          Verdict.of(
              GuardRule.MORE_THAN_ONE_STEP_UP,
              Fact.said("dose", from),
              Fact.said("wanted as the next step", next)));
    }
    return List.copyOf(verdicts);
  }

  /** What speaks against a dose whoever injects it: the preparation's limits and the drawing up. */
  public static List<Verdict> askWithoutCourse(Dose dose) {
    var verdicts = new ArrayList<Verdict>();
    limits(dose.preparation(), dose.preparation().ceiling(), dose.volume(), verdicts);
    measuring(dose.barrel(), dose.volume(), verdicts);
    return List.copyOf(verdicts);
  }

  private static void protocolLimits(Question question, Volume volume, List<Verdict> verdicts) {
    Preparation preparation = question.preparation();
    for (Protocol.ComponentLimit limit : question.protocol().componentLimits()) {
      if (limit.isPassedBy(preparation, volume)) {
        verdicts.add(
            Verdict.of(
                    GuardRule.ABOVE_COMPONENT_LIMIT,
                    Fact.said(
                        "this volume holds",
                        preparation.ingredient(limit.component()).orElseThrow().exactWords(volume)),
                    Fact.said("limit of the protocol", limit))
                .citing(limit.source()));
      }
    }
  }

  private static void limits(
      Preparation preparation, Volume ceiling, Volume volume, List<Verdict> verdicts) {
    if (volume.isMoreThan(ceiling)) {
      verdicts.add(Verdict.of(GuardRule.ABOVE_CEILING, Fact.said("maximum volume", ceiling)));
    }
    for (Ingredient ingredient : preparation.ingredients()) {
      if (ingredient.isPassedBy(volume)) {
        verdicts.add(
            Verdict.of(
                GuardRule.ABOVE_COMPONENT_LIMIT,
                Fact.said("this volume holds", ingredient.exactWords(volume)),
                Fact.said(
                    "limit", ingredient.limit().orElseThrow().in(ingredient.component().unit()))));
      }
    }
  }

  private static void measuring(Barrel barrel, Volume volume, List<Verdict> verdicts) {
    if (!barrel.hasMarkAt(volume)) {
      verdicts.add(Verdict.of(GuardRule.BETWEEN_MARKS, Fact.said("syringe", barrel)));
    }
    if (volume.isLessThan(DrawingError.BLOCK_BELOW.value())) {
      verdicts.add(Verdict.of(GuardRule.TOO_SMALL_TO_MEASURE, Fact.said("volume", volume)));
    } else if (!volume.isMoreThan(DrawingError.WARN_AT_OR_BELOW.value())) {
      verdicts.add(Verdict.of(GuardRule.SMALL_VOLUME, Fact.said("volume", volume)));
    }
    if (volume.equals(Volume.ZERO)) {
      return;
    }
    DrawingError.of(volume, barrel).ifPresent(error -> accuracy(error, verdicts));
  }

  private static void accuracy(DrawingError error, List<Verdict> verdicts) {
    Fact worst = Fact.said("worst case", error.totalPercentWords());
    if (error.isMoreThan(DrawingError.ASK_FOR_ANOTHER_ABOVE_PERCENT.value())) {
      verdicts.add(Verdict.of(GuardRule.HARD_TO_MEASURE, worst));
    } else if (error.isMoreThan(DrawingError.WARN_ABOVE_PERCENT.value())) {
      verdicts.add(Verdict.of(GuardRule.INACCURATE, worst));
    }
  }

  /** One rung above what was drawn and ordered of the last dose that went in, or less. */
  private static Optional<Verdict> oneStepUp(Question question, Volume volume) {
    List<Injection> since = question.history().sinceChangeTo(question.preparation());
    for (Injection one : since.reversed()) {
      if (one.wentIn()) {
        return above(one.smallerOfDrawnAndOrdered(), failedLast(since), question, volume);
      }
    }
    return first(question, volume);
  }

  private static Optional<Verdict> above(
      Volume base, Optional<Volume> failed, Question question, Volume volume) {
    return highest(question.ladder(), base, failed)
        .filter(volume::isMoreThan)
        .map(most -> tooHigh(base.toString(), failed, most));
  }

  /** The first dose that goes in is the first rung, or what may follow another preparation. */
  private static Optional<Verdict> first(Question question, Volume volume) {
    Beginning beginning = question.beginning();
    Optional<Volume> highest = beginning.highestOf(question.ladder());
    boolean isHigher = highest.filter(most -> !volume.isMoreThan(most)).isEmpty();
    return switch (beginning) {
      case Beginning.AsNew asNew when isHigher ->
          Optional.of(tooHigh("none yet", Optional.empty(), highest.orElseThrow()));
      case Beginning.AsNew asNew -> Optional.empty();
      case Beginning.AtMost(Carried carried) when isHigher ->
          Optional.of(
              highest
                  .map(most -> tooHigh("none yet", Optional.empty(), most))
                  .orElseGet(
                      () ->
                          Verdict.of(
                              GuardRule.NO_FIRST_DOSE,
                              Fact.said("preparation before", carried.from()),
                              Fact.said("last tolerated", carried.words()))));
      case Beginning.AtMost atMost -> Optional.empty();
      case Beginning.AsTold told when isHigher ->
          Optional.of(
              Verdict.of(
                  GuardRule.NOT_OPENED_AS_TOLD,
                  Fact.said("told from elsewhere", told.words()),
                  Fact.said("highest possible now", highest.map(Volume::toString).orElse("none"))));
      case Beginning.AsTold told -> Optional.empty();
      case Beginning.BelowTooLong tooLong ->
          Optional.of(
              Verdict.of(
                  isHigher ? GuardRule.NO_FIRST_DOSE : GuardRule.FIRST_AFTER_TOO_LONG,
                  Fact.said("too long, or not known how long", tooLong.words()),
                  Fact.said("highest possible now", highest.map(Volume::toString).orElse("none"))));
    };
  }

  private static Verdict tooHigh(String base, Optional<Volume> failed, Volume most) {
    var facts = new ArrayList<Fact>();
    facts.add(Fact.said("last dose that went in", base));
    failed.ifPresent(
        tried -> facts.add(Fact.said("tried since, not known to have gone in", tried)));
    facts.add(Fact.said("highest possible now", most));
    return Verdict.of(GuardRule.MORE_THAN_ONE_STEP_UP, facts.toArray(Fact[]::new));
  }

  /** What was tried last, if it is not known to have gone in. */
  private static Optional<Volume> failedLast(List<Injection> since) {
    return since.isEmpty() || since.getLast().wentIn()
        ? Optional.empty()
        : Optional.of(since.getLast().ordered().orElse(since.getLast().drawn()));
  }

  /**
   * One rung above the base; after a failed dose no more than was tried, and after a failed one
   * below the base one rung above that one, because the base was not returned to.
   */
  private static Optional<Volume> highest(Ladder ladder, Volume base, Optional<Volume> failed) {
    Optional<Volume> above = ladder.above(base);
    if (failed.isEmpty()) {
      return above;
    }
    Volume tried = failed.get();
    return tried.isLessThan(base)
        ? ladder.above(tried)
        : Optional.of(above.filter(tried::isMoreThan).orElse(tried));
  }

  private static Optional<Verdict> closed(Question question, Volume volume) {
    return question
        .history()
        .closing(question.preparation(), volume)
        .map(one -> Verdict.of(GuardRule.VOLUME_CLOSED, factsOf(question, one)));
  }

  private static Optional<Verdict> higherAfterLong(Question question, Volume volume) {
    return question
        .history()
        .forbiddingHigher(question.preparation(), volume)
        .map(one -> Verdict.of(GuardRule.HIGHER_AFTER_LONG, factsOf(question, one)));
  }

  /** One for each injection, so that an override of one says nothing of another. */
  private static List<Verdict> signAnew(Question question, Volume volume) {
    var verdicts = new ArrayList<Verdict>();
    for (Injection one : question.history().waiting(question.preparation(), volume)) {
      verdicts.add(waitsFor(question, one));
    }
    return verdicts;
  }

  private static Verdict waitsFor(Question question, Injection injection) {
    var facts = new ArrayList<Fact>();
    facts.add(new Fact.Which("injection", Long.toString(injection.entry())));
    facts.addAll(List.of(factsOf(question, injection)));
    return new Verdict(GuardRule.SIGN_ANEW, facts, GuardRule.SIGN_ANEW.clears());
  }

  private static Optional<Verdict> aboveFreshStock(Question question, Volume volume) {
    return NewStock.restartAt(question)
        .filter(volume::isMoreThan)
        .map(
            restart ->
                Verdict.of(
                    GuardRule.NEW_STOCK,
                    new Fact.Which(
                        "vial", question.vial().map(one -> one.stock().vial()).orElse("")),
                    Fact.said("highest dose to begin this vial with", restart),
                    Fact.said("asked for", volume)));
  }

  private static Optional<Verdict> careAbove(Question question, Volume volume) {
    return question
        .protocol()
        .careAbove()
        .filter(
            most ->
                most.value()
                    .in(question.preparation())
                    .filter(exact -> ExactVolume.of(volume).compareTo(exact) > 0)
                    .isPresent())
        .filter(most -> !question.screening().heart().isEmpty())
        .map(
            most ->
                Verdict.of(
                    GuardRule.CARE_ABOVE,
                    Fact.said(Fact.CONDITION, question.screening().heart().getFirst().words()),
                    Fact.said("above", most.value())));
  }

  static Fact[] factsOf(Question question, Injection injection) {
    History history = question.history();
    var facts = new ArrayList<Fact>();
    facts.add(
        new Fact.Happened(
            history.isUndated(injection) ? "injected before" : "injected", injection.at()));
    facts.add(Fact.said("drawn", injection.drawn()));
    if (history.mayHaveBeen().contains(injection)) {
      facts.add(
          Fact.said("of what, as the vial is not known", injection.preparation().composition()));
    } else if (!injection.preparation().isSameAs(question.preparation())) {
      facts.add(Fact.said("of", injection.preparation().composition()));
    }
    facts.add(Fact.said("response", injection.responseWords()));
    return facts.toArray(Fact[]::new);
  }
}
