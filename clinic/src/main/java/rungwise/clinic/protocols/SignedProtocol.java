package rungwise.clinic.protocols;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.protocol.Composition;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.Unusual;

/**
 * A protocol that the clinic signed for use, with the document that says it.
 *
 * @param held what the document says, as it holds now
 * @param confirmed the numbers that its signer confirmed singly
 * @param waits why it has to be signed anew, each reason with what holds meanwhile; empty if it
 *     need not
 */
public record SignedProtocol(
    EarlierProtocol held,
    List<String> confirmed,
    List<String> waits,
    String document,
    AccountId by,
    Instant at) {

  public SignedProtocol {
    confirmed = List.copyOf(confirmed);
    waits = List.copyOf(waits);
  }

  /** What was signed, by what its document says. */
  static SignedProtocol of(ProtocolShelf.Signed signed, EarlierProtocol held) {
    return new SignedProtocol(
        held,
        signed.confirmed(),
        waits(held, signed.confirmed()),
        signed.document(),
        signed.by(),
        signed.at());
  }

  /** The rules as they hold. */
  public Protocol protocol() {
    return held.protocol();
  }

  /** Whether it has to be signed anew, as a next version, before another course begins by it. */
  public boolean isWaiting() {
    return !waits.isEmpty();
  }

  private static List<String> waits(EarlierProtocol held, List<String> confirmed) {
    var waits = new ArrayList<String>();
    for (Floor floor : held.floors()) {
      waits.add(
          "Whatever it says, "
              + floor.words()
              + ": that holds in its place ("
              + floor.source().words()
              + ").");
    }
    if (held.lacksComposition()) {
      waits.add(
          "It is in volumes and does not say of what composition: "
              + held.protocol()
                  .composition()
                  .map(Composition::toString)
                  .map(said -> "as the sample it is read as written for " + said + ".")
                  .orElse("it holds for no preparation, and no dose by it."));
    }
    Unusual.in(held.protocol()).stream()
        .filter(one -> !confirmed.contains(one.number()))
        .map(one -> "Nobody has confirmed this singly; it holds until then: " + one.words())
        .forEach(waits::add);
    return waits;
  }
}
