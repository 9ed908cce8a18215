package rungwise.dosing.protocol;

import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;

/** What a protocol counts its steps in: the content of one component, or a volume. */
public sealed interface ProtocolAmount {

  /** A mass of one component, for preparations that hold it alone. */
  record Content(Component component, Mass mass) implements ProtocolAmount {
    @Override
    public String toString() {
      return mass.in(component.unit());
    }
  }

  /** A volume, for mixtures, where no component leads. */
  record OfVolume(Volume volume) implements ProtocolAmount {
    @Override
    public String toString() {
      return volume.toString();
    }
  }

  /** Whether it is zero. */
  default boolean isNothing() {
    return switch (this) {
      case Content content -> content.mass().equals(Mass.ofPicograms(0));
      case OfVolume volume -> volume.volume().equals(Volume.ZERO);
    };
  }

  /** The exact volume of a preparation that holds this; none if the component is not in it. */
  default Optional<ExactVolume> in(Preparation preparation) {
    return switch (this) {
      case Content content ->
          preparation
              .ingredient(content.component())
              .map(ingredient -> ingredient.strength().volumeOf(content.mass()));
      case OfVolume volume -> Optional.of(ExactVolume.of(volume.volume()));
    };
  }

  /** Whether the two can be added and compared. */
  default boolean isLike(ProtocolAmount other) {
    return switch (this) {
      case Content content ->
          other instanceof Content like && like.component() == content.component();
      case OfVolume volume -> other instanceof OfVolume;
    };
  }

  /**
   * This amount and a step.
   *
   * @throws IllegalArgumentException if the two are not alike
   */
  default ProtocolAmount plus(ProtocolAmount step) {
    if (this instanceof Content(Component component, Mass mass)
        && step instanceof Content(Component same, Mass more)
        && component == same) {
      return new Content(component, mass.plus(more));
    }
    if (this instanceof OfVolume(Volume volume) && step instanceof OfVolume(Volume more)) {
      return new OfVolume(volume.plus(more));
    }
    throw new IllegalArgumentException("bug: " + step + " cannot be added to " + this);
  }

  /**
   * Whether this is more than another.
   *
   * @throws IllegalArgumentException if the two are not alike
   */
  default boolean isMoreThan(ProtocolAmount other) {
    if (this instanceof Content(Component component, Mass mass)
        && other instanceof Content(Component same, Mass limit)
        && component == same) {
      return mass.isMoreThan(limit);
    }
    if (this instanceof OfVolume(Volume volume) && other instanceof OfVolume(Volume limit)) {
      return volume.isMoreThan(limit);
    }
    throw new IllegalArgumentException("bug: " + other + " cannot be compared with " + this);
  }
}
