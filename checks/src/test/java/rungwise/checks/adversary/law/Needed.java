package rungwise.checks.adversary.law;

import java.util.List;
import rungwise.dosing.screening.Condition;

/** What must be on record before a dose: for home, and of the screening. */
public final class Needed {

  /** For a mixture, which no label covers, the last one too. */
  public static final List<String> READY =
      List.of("TEACH_BACK", "SUPERVISED_INJECTION", "EMERGENCY_PLAN", "OFF_LABEL_CONSENT");

  private Needed() {}

  /** What home use of a mixture needs. */
  public static List<String> forHome(Mix mix) {
    return mix.isAlone() ? READY.subList(0, READY.size() - 1) : READY;
  }

  /** Whether a yes forbids every dose. */
  public static boolean isContraindication(Condition condition) {
    return condition == Condition.MYELOMA_OR_LEUKAEMIA
        || condition == Condition.CURVATURE_OR_SCARRING;
  }

  /** Whether a yes waits for a prescriber's decision; one of them only with phentolamine. */
  public static boolean isDecision(Condition condition, Mix mix) {
    return condition == Condition.LONG_ERECTION_BEFORE
        || condition == Condition.MAO_INHIBITOR
        || (condition == Condition.CORONARY_DISEASE && !mix.isAlone());
  }
}
