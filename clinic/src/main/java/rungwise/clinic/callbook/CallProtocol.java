package rungwise.clinic.callbook;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.CallStep.Shown;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.rescue.RescueLimits;

/**
 * What a clinic does in a call about a long erection. It changes nothing of what 4 hours need, and
 * no step of it is shown before that.
 *
 * @param number whom to call at night, as the clinic writes it; empty in the sample
 * @param limits of a rescue with phenylephrine
 */
public record CallProtocol(List<Step> steps, String number, RescueLimits limits) {

  /** Who does a step. */
  public enum Asks {
    ON_CALL("Clinician on call"),
    NURSE("Nurse"),
    TREATING("Treating physician"),

    /** What he does himself: it is over at 4 hours, whatever anybody signs. */
    HE("He himself, at home");

    private final String words;

    Asks(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** What a form sends. */
    public String token() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of a token, if there is one. */
    public static Optional<Asks> of(String token) {
      return Arrays.stream(values()).filter(one -> one.token().equals(token)).findFirst();
    }
  }

  /** One step. */
  public record Step(Asks asks, Shown shown, String words) {
    public Step {
      if (asks == Asks.HE && shown != Shown.BEFORE_FOUR_HOURS) {
        throw new IllegalArgumentException("bug: home measures after 4 hours: " + words);
      }
    }

    /** Whether it is due at that time of an erection. */
    public boolean isDue(Elapsed elapsed) {
      return shown == Shown.ALWAYS || (shown == Shown.FROM_FOUR_HOURS) == elapsed.isEmergency();
    }
  }

  /** No clinic has signed it. */
  public static final CallProtocol SAMPLE =
      new CallProtocol(
          Arrays.stream(CallStep.values()).map(CallProtocol::sample).toList(),
          "",
          RescueLimits.SAMPLE.value());

  public CallProtocol {
    steps = List.copyOf(steps);
  }

  private static Step sample(CallStep step) {
    Asks asks =
        switch (step) {
          case WALK_AND_COLD -> Asks.HE;
          case SENT, NOTHING_MORE, WHO_IS_WITH_HIM, SETS_OUT, CALLED_AGAIN, HOSPITAL_TOLD ->
              Asks.ON_CALL;
        };
    return new Step(asks, step.shown(), step.words());
  }
}
