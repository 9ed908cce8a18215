package rungwise.clinic.rescue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.measured.Vitals;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLog;
import rungwise.dosing.urgent.rescue.RescueLog.Side;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.quantities.Acidity;
import rungwise.quantities.Concentration;
import rungwise.quantities.GasPressure;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/**
 * One thing that was done, given or measured in a call. It decides nothing about a dose of his
 * treatment, and it ends no call.
 */
public sealed interface RescueWord {

  /**
   * Phenylephrine went in. It is written whatever it was and whenever it comes to be known.
   *
   * @param dose how much; empty if nobody can say
   * @param strength of the syringe; empty if nobody can say
   * @param volume that went in; empty if nobody can say
   * @param before blood pressure and pulse, as measured beside it
   * @param givenBy who gave it, as typed
   * @param checkedBy the second person who had read label and dilution; empty if there was none
   */
  record Given(
      Instant at,
      Optional<Mass> dose,
      Optional<Concentration> strength,
      Optional<Volume> volume,
      Side side,
      Optional<Vitals> before,
      String givenBy,
      Optional<String> checkedBy)
      implements RescueWord {

    /** The same as the arithmetic of the rescue has it. */
    public RescueLog.Given counted() {
      return new RescueLog.Given(dose, strength, at, side);
    }
  }

  /** Blood pressure and pulse were measured. */
  record Measured(Instant at, Vitals vitals) implements RescueWord {}

  /** Blood was drawn from the corpus cavernosum, and this is what its report says. */
  record GasTaken(Instant at, GasPressure oxygen, GasPressure carbonDioxide, Acidity ph)
      implements RescueWord {

    /** What it says by the published limits; what is unusual was typed twice. */
    public GasReading reading() {
      return new Gas(
              Twice.both(oxygen, oxygen),
              Twice.both(carbonDioxide, carbonDioxide),
              Twice.both(ph, ph))
          .read();
    }
  }

  /**
   * A dose was asked for and may be prepared. It is none that was given.
   *
   * @param secondPerson who has read label and dilution; empty if there was nobody
   * @param overridden why it was held, where the treating clinician went on; the reason is the
   *     entry's
   */
  record Prepared(
      Instant at, Mass dose, Optional<String> secondPerson, List<LogVerdict.Kind> overridden)
      implements RescueWord {
    public Prepared {
      overridden = List.copyOf(overridden);
    }
  }

  /**
   * A step of the clinic's signed protocol was done; what was said is the entry's.
   *
   * @param version of the protocol
   * @param line which step of it, from 1
   * @param words of the step as they stood then
   */
  record Ticked(int version, int line, String words, Instant at, Speaker by)
      implements RescueWord {}

  /** What the entry that this one corrects says was written wrongly; it stays to be read. */
  record Struck() implements RescueWord {}
}
