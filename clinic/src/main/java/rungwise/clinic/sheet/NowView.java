package rungwise.clinic.sheet;

import java.util.Optional;
import rungwise.dosing.known.Dose;

/**
 * The one answer to "may he inject now?", with the place and the signature it rests on.
 *
 * @param sentence the answer itself: "In the clinic only: 0.12 mL"
 * @param then what a reader has to know with it; may be empty
 * @param dose the signed dose, if he may inject it now
 */
public record NowView(Sign sign, String sentence, String then, Optional<Dose> dose) {

  /** The same with when it was asked. */
  NowView asked(String words) {
    return new NowView(sign, sentence, then.isEmpty() ? words : then + " " + words, dose);
  }

  /** What is drawn before the answer. */
  public enum Sign {
    YES("Yes"),
    CLINIC_ONLY("In the clinic only"),
    WAITS("Wait"),
    STOPPED("Stop");

    private final String word;

    Sign(String word) {
      this.word = word;
    }

    /** The same for ears. */
    public String word() {
      return word;
    }

    /** Whether he may inject, at home or in the clinic. */
    public boolean isYes() {
      return this == YES || this == CLINIC_ONLY;
    }
  }
}
