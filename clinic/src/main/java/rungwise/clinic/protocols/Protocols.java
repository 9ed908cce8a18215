package rungwise.clinic.protocols;

import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ToConfirm;
import rungwise.dosing.protocol.Unusual;
import rungwise.quantities.Reading;

/** The use cases about protocols. A course can only run on one that the clinic has signed. */
public final class Protocols {

  private static final String NOT_ALLOWED =
      "Only a prescriber or the programme lead can sign a protocol.";

  private final ProtocolShelf shelf;
  private final ProtocolReader reader;
  private final Transactions transactions;
  private final InstantSource clock;
  private final Predicate<Protocol> canKeepLimits;

  /** What a signed document says never changes. */
  private final Map<ProtocolShelf.Signed, SignedProtocol> read = new ConcurrentHashMap<>();

  /**
   * Protocols of a clinic.
   *
   * @param canKeepLimits whether a signed population can be asked about what a protocol is for
   */
  public Protocols(
      ProtocolShelf shelf,
      ProtocolReader reader,
      Transactions transactions,
      InstantSource clock,
      Predicate<Protocol> canKeepLimits) {
    this.shelf = shelf;
    this.reader = reader;
    this.transactions = transactions;
    this.clock = clock;
    this.canKeepLimits = canKeepLimits;
  }

  /** The samples that come with the program and are not signed yet. */
  public List<Protocol> unsignedSamples() {
    return samples().stream()
        .filter(protocol -> shelf.find(protocol.name(), protocol.version()).isEmpty())
        .toList();
  }

  /** The protocols that the clinic has signed. */
  public List<SignedProtocol> signed() {
    return shelf.all().stream().map(this::read).toList();
  }

  /** Those of them on which a course may begin to run on a day: none that waits to be signed. */
  public List<SignedProtocol> holdingOn(LocalDate day) {
    return signed().stream()
        .filter(signed -> !signed.isWaiting())
        .filter(signed -> signed.protocol().more().holdsOn(day))
        .toList();
  }

  /** A signed protocol. */
  public Optional<SignedProtocol> find(String name, int version) {
    return shelf.find(name, version).map(this::read);
  }

  /**
   * The last later version of a protocol in so far as its limits hold for whoever runs on this one:
   * at once where it lowers a limit, else from the first day that it names.
   */
  public List<Protocol> newerThan(Protocol running, Instant now, LocalDate day) {
    return shelf.all().stream()
        .filter(one -> one.name().equals(running.name()) && one.version() > running.version())
        .filter(one -> !one.at().isAfter(now))
        .map(one -> read(one).protocol())
        .filter(newer -> newer.lowersLimitOf(running) || newer.more().holdsOn(day))
        .max(Comparator.comparingInt(Protocol::version))
        .map(List::of)
        .orElse(List.of());
  }

  private SignedProtocol read(ProtocolShelf.Signed signed) {
    return read.computeIfAbsent(
        signed, one -> SignedProtocol.of(one, reader.readSigned(one.document()).orThrow()));
  }

  /** Signs a sample for use in this clinic; only a prescriber or the programme lead may. */
  public Reading<Protocol> signSample(Account actor, String name, int version) {
    if (!maySign(actor)) {
      return Reading.refused(NOT_ALLOWED);
    }
    return transactions.inTransaction(
        () -> {
          if (shelf.find(name, version).isPresent()) {
            return Reading.refused("This protocol is already signed: nothing was changed.");
          }
          return reader.samples().stream()
              .filter(document -> isNamed(document, name, version))
              .findFirst()
              .map(document -> keep(actor, reader.read(document).orThrow(), document, Set.of()))
              .orElseGet(() -> Reading.refused("There is no such sample: open the list again."));
        });
  }

  /** The document of a signed protocol or of a sample. */
  public Optional<String> document(String name, int version) {
    return find(name, version)
        .map(SignedProtocol::document)
        .or(
            () ->
                reader.samples().stream()
                    .filter(document -> isNamed(document, name, version))
                    .findFirst());
  }

  /** Every sample that comes with the program, signed or not. */
  public List<Protocol> samples() {
    return reader.samples().stream().map(document -> reader.read(document).orThrow()).toList();
  }

  /** The signed protocol or the sample of a key such as "uk-label version 1". */
  public Optional<Protocol> ofKey(String key) {
    return Stream.concat(signed().stream().map(SignedProtocol::protocol), samples().stream())
        .filter(protocol -> protocol.key().equals(key))
        .findFirst();
  }

  /** A document taken apart, to be written anew. */
  public Map<String, Object> parts(String document) {
    return reader.parts(document);
  }

  /** The document that says these parts. */
  public String write(Map<String, Object> parts) {
    return reader.document(parts);
  }

  /**
   * Checks a document that this clinic wrote: whatever contradicts itself, and its name and version
   * against what is signed already.
   */
  public Reading<Protocol> check(String document) {
    return switch (reader.read(document)) {
      case Reading.Refused<Protocol> refused -> refused;
      case Reading.Read<Protocol> read -> {
        List<String> faults = faultsOf(read.value());
        yield faults.isEmpty() ? read : new Reading.Refused<>(faults);
      }
    };
  }

  private List<String> faultsOf(Protocol protocol) {
    var faults = new ArrayList<String>();
    if (protocol.sample()) {
      faults.add("sample: a protocol of this clinic is no sample: write false");
    }
    if (samples().stream().anyMatch(sample -> sample.name().equals(protocol.name()))) {
      faults.add(
          "protocol: \"" + protocol.name() + "\" is the name of a sample: choose another name");
    }
    if (protocol.chances().isAsked() && !canKeepLimits.test(protocol)) {
      faults.add(
          "model: no population of the response model is signed here for what this protocol is"
              + " written for, so that its limits would not be kept: leave the part out, or let the"
              + " programme lead sign one first");
    }
    int next = nextVersion(protocol.name());
    if (protocol.version() != next) {
      faults.add(
          "version: " + protocol.version() + " is not the next one of this name, which is " + next);
    }
    return faults;
  }

  /** The version that a new document of a name would have. */
  public int nextVersion(String name) {
    return shelf.all().stream()
            .filter(signed -> signed.name().equals(name))
            .mapToInt(ProtocolShelf.Signed::version)
            .max()
            .orElse(0)
        + 1;
  }

  /**
   * Signs a document that this clinic wrote; only a prescriber or the programme lead may.
   *
   * @param confirmed the numbers that the signer ticked, as {@link ToConfirm} names them
   */
  public Reading<Protocol> signWritten(Account actor, String document, Set<String> confirmed) {
    if (!maySign(actor)) {
      return Reading.refused(NOT_ALLOWED);
    }
    return transactions.inTransaction(
        () -> {
          Reading<Protocol> checked = check(document);
          return checked
              .found()
              .map(protocol -> keep(actor, protocol, document, confirmed))
              .orElse(checked);
        });
  }

  private Reading<Protocol> keep(
      Account actor, Protocol protocol, String document, Set<String> confirmed) {
    List<ToConfirm> asked = Unusual.in(protocol);
    List<String> missing =
        asked.stream()
            .filter(one -> !confirmed.contains(one.number()))
            .map(one -> "Confirm this number singly, or change it: " + one.words())
            .toList();
    if (!missing.isEmpty()) {
      return new Reading.Refused<>(missing);
    }
    shelf.append(
        new ProtocolShelf.Signed(
            protocol.name(),
            protocol.version(),
            document,
            asked.stream().map(ToConfirm::number).toList(),
            actor.id(),
            clock.instant()));
    return Reading.of(protocol);
  }

  private static boolean maySign(Account actor) {
    return actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD);
  }

  private boolean isNamed(String document, String name, int version) {
    Protocol protocol = reader.read(document).orThrow();
    return protocol.name().equals(name) && protocol.version() == version;
  }
}
