package rungwise.dosing.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.decision.Proposal;
import rungwise.dosing.decision.Reason;
import rungwise.dosing.history.Injection;
import rungwise.quantities.Volume;

/**
 * What a way to choose wants, before the guards are asked. A volume has no name yet: whether it is
 * the same, more or less is said once, after the guards, by what was really drawn.
 */
public sealed interface Wanted {

  /** At least one; the deciding one first. */
  List<Reason> reasons();

  /** A volume. */
  record Dose(Volume volume, List<Reason> reasons) implements Wanted {
    public Dose {
      reasons = List.copyOf(reasons);
    }
  }

  /** No volume. */
  record NoDose(Decision.WithoutDose decision, List<Reason> reasons) implements Wanted {
    public NoDose {
      reasons = List.copyOf(reasons);
    }
  }

  /** A volume for one reason. */
  static Wanted dose(Volume volume, Reason reason) {
    return new Dose(volume, List.of(reason));
  }

  /** No volume, for one reason. */
  static Wanted none(Decision.WithoutDose decision, Reason reason) {
    return new NoDose(decision, List.of(reason));
  }

  /** The volume that is wanted, if any. */
  default Optional<Volume> proposed() {
    return switch (this) {
      case Dose dose -> Optional.of(dose.volume());
      case NoDose none -> Optional.empty();
    };
  }

  /** Another volume instead, for a reason that comes before these. */
  default Wanted lowered(Volume volume, Reason first) {
    return new Dose(volume, after(first));
  }

  /** No volume instead, for a reason that comes before these. */
  default Wanted without(Decision.WithoutDose decision, Reason first) {
    return new NoDose(decision, after(first));
  }

  /** The same, with a reason that comes after these. */
  default Wanted and(Reason last) {
    var all = new ArrayList<>(reasons());
    all.add(last);
    return switch (this) {
      case Dose dose -> new Dose(dose.volume(), all);
      case NoDose none -> new NoDose(none.decision(), all);
    };
  }

  private List<Reason> after(Reason first) {
    var all = new ArrayList<Reason>();
    all.add(first);
    all.addAll(reasons());
    return all;
  }

  /**
   * What it is called.
   *
   * @param last the last injection of this preparation
   */
  default Proposal named(Optional<Injection> last) {
    return switch (this) {
      case Dose dose -> new Proposal(Decision.ofDose(dose.volume(), last), reasons());
      case NoDose none -> new Proposal(none.decision(), reasons());
    };
  }
}
