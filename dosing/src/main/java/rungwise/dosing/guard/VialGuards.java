package rungwise.dosing.guard;

import java.util.List;
import rungwise.dosing.history.Fact;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.supply.VialLimit;

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
    VialEnd end = vial.end();
    if (!end.isInDate(question.now())) {
      return List.of(
          Verdict.of(
              pastWhat(end.by()),
              Fact.said("ended by", end.by().words()),
              new Fact.Happened("usable until", end.at())));
    }
    return switch (vial.care()) {
      case AS_LABELLED -> aboutOpening(vial);
      case TO_BE_JUDGED -> List.of(Verdict.of(GuardRule.VIAL_TO_BE_JUDGED, which(vial)));
      case GONE -> List.of(Verdict.of(GuardRule.VIAL_GONE, which(vial)));
    };
  }

  private static Fact which(VialInHand vial) {
    return new Fact.Which("vial", vial.stock().vial());
  }

  private static List<Verdict> aboutOpening(VialInHand vial) {
    VialEnd end = vial.end();
    return switch (end.inUse()) {
      case KNOWN -> List.of();
      case OPEN_AND_NOT_STATED ->
          List.of(
              Verdict.of(
                  GuardRule.IN_USE_NOT_STATED,
                  which(vial),
                  new Fact.Happened("usable until by its label", end.at())));
    };
  }

  private static GuardRule pastWhat(VialLimit limit) {
    return switch (limit) {
      case VialLimit.LabelDate label -> GuardRule.VIAL_PAST_DATE;
      case VialLimit.DaysOpen days -> GuardRule.VIAL_OPEN_TOO_LONG;
      case VialLimit.Dissolved hours -> GuardRule.VIAL_OPEN_TOO_LONG;
      case VialLimit.SingleUse once -> GuardRule.VIAL_OPEN_TOO_LONG;
    };
  }
}
