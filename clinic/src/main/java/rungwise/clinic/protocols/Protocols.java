package rungwise.clinic.protocols;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.dosing.known.Protocol;
import rungwise.quantities.Reading;

/** The use cases about protocols. A course can only run on one that the clinic has signed. */
public final class Protocols {

  private final ProtocolShelf shelf;
  private final ProtocolReader reader;
  private final Transactions transactions;
  private final InstantSource clock;

  public Protocols(
      ProtocolShelf shelf, ProtocolReader reader, Transactions transactions, InstantSource clock) {
    this.shelf = shelf;
    this.reader = reader;
    this.transactions = transactions;
    this.clock = clock;
  }

  /** The samples that come with the program and are not signed yet. */
  public List<Protocol> unsignedSamples() {
    return reader.samples().stream()
        .map(document -> reader.read(document).orThrow())
        .filter(protocol -> shelf.find(protocol.name(), protocol.version()).isEmpty())
        .toList();
  }

  /** The protocols that the clinic has signed. */
  public List<SignedProtocol> signed() {
    return shelf.all().stream().map(this::read).toList();
  }

  /** A signed protocol. */
  public Optional<SignedProtocol> find(String name, int version) {
    return shelf.find(name, version).map(this::read);
  }

  private SignedProtocol read(ProtocolShelf.Signed signed) {
    Protocol protocol = reader.read(signed.document()).orThrow();
    return new SignedProtocol(protocol, signed.document(), signed.by(), signed.at());
  }

  /** Signs a sample for use in this clinic; only a prescriber or the programme lead may. */
  public Reading<Protocol> signSample(Account actor, String name, int version) {
    if (!actor.may(Role.PRESCRIBER) && !actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused("Only a prescriber or the programme lead can sign a protocol.");
    }
    return transactions.inTransaction(
        () -> {
          if (shelf.find(name, version).isPresent()) {
            return Reading.refused("This protocol is already signed: nothing was changed.");
          }
          return reader.samples().stream()
              .filter(document -> isNamed(document, name, version))
              .findFirst()
              .map(
                  document -> {
                    shelf.append(
                        new ProtocolShelf.Signed(
                            name, version, document, actor.id(), clock.instant()));
                    return reader.read(document);
                  })
              .orElseGet(() -> Reading.refused("There is no such sample: open the list again."));
        });
  }

  private boolean isNamed(String document, String name, int version) {
    Protocol protocol = reader.read(document).orThrow();
    return protocol.name().equals(name) && protocol.version() == version;
  }
}
