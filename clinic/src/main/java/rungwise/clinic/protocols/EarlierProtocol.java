package rungwise.clinic.protocols;

import java.util.List;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;

/**
 * A document that was signed, as it holds now: it may have been signed before a rule was that no
 * protocol passes.
 *
 * @param protocol with each floor in the place of what passes it
 * @param floors the floors that the document passes
 * @param lacksComposition whether it is in volumes and does not say of what; the protocol names a
 *     composition all the same where its text is that of a sample
 */
public record EarlierProtocol(Protocol protocol, List<Floor> floors, boolean lacksComposition) {

  public EarlierProtocol {
    floors = List.copyOf(floors);
  }
}
