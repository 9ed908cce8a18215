package rungwise.dosing.urgent.rescue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.quantities.Mass;

/** Whether a dose that is asked for may be prepared now. */
public sealed interface LogVerdict {

  /**
   * It may.
   *
   * @param inTheHour the sum of the last hour with this dose
   */
  record Allowed(Mass inTheHour) implements LogVerdict {}

  /**
   * It may not, unless the treating clinician goes on with a reason.
   *
   * @param inTheHour the sum of the last hour with this dose
   */
  record Hold(Mass inTheHour, List<Reason> reasons) implements LogVerdict {
    public Hold {
      reasons = List.copyOf(reasons);
      if (reasons.isEmpty()) {
        throw new IllegalArgumentException("bug: a hold without a reason");
      }
    }

    /** The treating clinician goes on, having read just these reasons. */
    public Overridden overriddenBy(String clinician, String why) {
      return new Overridden(this, clinician, why);
    }
  }

  /** It may not, whatever anybody signs. */
  record Refused(List<Refusal> why) implements LogVerdict {
    public Refused {
      why = List.copyOf(why);
      if (why.isEmpty()) {
        throw new IllegalArgumentException("bug: a refusal without a reason");
      }
    }
  }

  /** A hold that the treating clinician lifted for this one dose. A refusal has no such way. */
  record Overridden(Hold hold, String clinician, String why) {
    public Overridden {
      if (clinician.isBlank() || why.isBlank()) {
        throw new IllegalArgumentException("bug: a hold is lifted by nobody or without a reason");
      }
    }
  }

  /** What kinds of reasons there are. */
  enum Kind {
    OVER_LIMIT,
    AMOUNT_NOT_KNOWN,
    SOONER_THAN_SIGNED,
    PRESSURE_NOT_WRITTEN,
    MAO_INHIBITOR,
    NO_SECOND_PERSON
  }

  /** Why it is held, with the facts. */
  sealed interface Reason {

    /** Which of them it is. */
    default Kind kind() {
      return switch (this) {
        case OverLimit over -> Kind.OVER_LIMIT;
        case AmountNotKnown unknown -> Kind.AMOUNT_NOT_KNOWN;
        case SoonerThanSigned sooner -> Kind.SOONER_THAN_SIGNED;
        case PressureNotWritten pressure -> Kind.PRESSURE_NOT_WRITTEN;
        case MaoInhibitor inhibitor -> Kind.MAO_INHIBITOR;
        case NoSecondPerson nobody -> Kind.NO_SECOND_PERSON;
      };
    }

    /** Nobody can say how much a dose of the last hour was. */
    record AmountNotKnown(Instant at) implements Reason {}

    /** More in the last hour than the clinic signed. */
    record OverLimit(Mass inTheHour, Mass limit) implements Reason {}

    /** Sooner after the last dose than the clinic signed, and not sooner than the floor. */
    record SoonerThanSigned(Instant last, Instant notBefore) implements Reason {}

    /**
     * No blood pressure was written since the last dose, or none in the hour before the first.
     *
     * @param lastDose when the last dose was given, if there was one
     */
    record PressureNotWritten(Optional<Instant> lastDose) implements Reason {}

    /** He takes an MAO inhibitor, or nobody knows. */
    record MaoInhibitor(RescueLog.Answer answer) implements Reason {}

    /** Nobody has read label and dilution with the one who prepares. */
    record NoSecondPerson() implements Reason {}
  }
}
