package rungwise.dosing.guard;

import java.util.List;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.VialInHand;

/** The guards that ask about the vial, before anything is drawn from it. */
public final class VialGuards {

  private VialGuards() {}

  /** What speaks against drawing from the vial in hand at the question's instant. */
  public static List<Verdict> ask(Question question) {
    return question
        .vial()
        .map(vial -> about(question, vial))
        .orElseGet(() -> List.of(Verdict.of(GuardRule.NO_VIAL)));
  }

  private static List<Verdict> about(Question question, VialInHand vial) {
    if (!vial.label().isOf(question.preparation())) {
      return List.of(
          Verdict.of(
              GuardRule.VIAL_DIFFERS,
              Fact.said("label", vial.label().composition()),
              Fact.said("order", question.preparation().composition())));
    }
    return question.now().isBefore(vial.usableUntil())
        ? List.of()
        : List.of(
            Verdict.of(
                GuardRule.VIAL_PAST_DATE, new Fact.Happened("usable until", vial.usableUntil())));
  }
}
