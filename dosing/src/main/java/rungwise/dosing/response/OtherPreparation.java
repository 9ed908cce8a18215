package rungwise.dosing.response;

import java.util.List;

/**
 * What happened with a preparation whose strength is not known exactly.
 *
 * @param strength relative to the preparations of which the strength is known
 * @param trials counted as if its strength were 1
 */
public record OtherPreparation(UncertainStrength strength, List<Trial> trials) {

  public OtherPreparation {
    trials = List.copyOf(trials);
  }
}
