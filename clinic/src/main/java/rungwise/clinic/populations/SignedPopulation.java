package rungwise.clinic.populations;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.response.ResponseModel;

/**
 * A population that the clinic signed.
 *
 * @param reference the preparation whose strength is 1
 * @param preparations those that it was signed for
 * @param inUseFor those of them whose courses ask it now; empty if it was replaced or withdrawn
 */
public record SignedPopulation(
    PopulationShelf.Signed signed,
    PopulationDocument document,
    Preparation reference,
    List<Preparation> preparations,
    List<Preparation> inUseFor,
    Optional<PopulationShelf.Withdrawn> withdrawn) {

  public SignedPopulation {
    preparations = List.copyOf(preparations);
    inUseFor = List.copyOf(inUseFor);
  }

  /** "alprostadil-published version 1": what a stored decision remembers of it. */
  public String key() {
    return signed.name() + " version " + signed.version();
  }

  public boolean isInUse() {
    return !inUseFor.isEmpty();
  }

  /** The same as the engine asks it. */
  public ResponseModel model() {
    return new ResponseModel(key(), document.population(), reference);
  }
}
