package rungwise.dosing.guard;

import java.util.Optional;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.ladder.Carried;
import rungwise.dosing.supply.Freshness;
import rungwise.quantities.Volume;

/**
 * A vial of full strength after one that may have lost some. What a man needed of the old one may
 * be too much of the new one. Stock is known by what it holds: another record of the same medicine,
 * another strength of it or a vial that nobody wrote down does not make older stock fresh.
 */
public final class NewStock {

  private NewStock() {}

  /**
   * The highest dose with which a new vial begins: the last one that was proven on fresh stock, or
   * the lowest step. Empty where nothing was injected before, where the vial is the same, or where
   * the one before was fresh.
   */
  public static Optional<Volume> restartAt(Question question) {
    return question
        .history()
        .last()
        .filter(last -> last.stock().freshness() != Freshness.FRESH)
        .filter(last -> !isInHand(question, last))
        .map(last -> proven(question).orElse(question.ladder().first()));
  }

  private static boolean isInHand(Question question, Injection last) {
    return question.vial().map(VialInHand::stock).filter(last.stock()::isSameAs).isPresent();
  }

  /** The volume that holds no more than the last dose proven on fresh stock of the same drugs. */
  private static Optional<Volume> proven(Question question) {
    return question.history().provenOnFreshStock().reversed().stream()
        .map(one -> new Carried(one.preparation(), one.drawn()))
        .filter(one -> one.isOfTheSameDrugsAs(question.preparation()))
        .findFirst()
        .flatMap(one -> one.most(question.preparation()))
        .map(most -> question.ladder().barrel().lastMarkWithin(most).orElse(Volume.ZERO));
  }
}
