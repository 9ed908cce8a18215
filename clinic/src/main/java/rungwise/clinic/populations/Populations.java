package rungwise.clinic.populations;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.populations.PopulationShelf.Kept;
import rungwise.clinic.populations.PopulationShelf.Signed;
import rungwise.clinic.populations.PopulationShelf.Withdrawn;
import rungwise.dosing.choice.ByRule;
import rungwise.dosing.choice.ByRuleAndModel;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * The use cases about populations of the response model. A course is asked about only by one that
 * the programme lead has signed for its preparation.
 *
 * <p>For a preparation the last signature that names it decides. If that population was withdrawn,
 * or a newer version of the same name leaves the preparation out, there is none: an earlier one
 * does not come back by itself.
 */
public final class Populations {

  /** The field of the name. */
  public static final String NAME_FIELD = "name";

  /** The field of the preparations for which it is signed. */
  public static final String PREPARATIONS_FIELD = "preparations";

  private static final String NOT_ALLOWED =
      "Only the programme lead can sign or withdraw a population of the response model.";

  private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,59}");
  private static final int LONGEST_DOCUMENT = 100_000;
  private static final int LONGEST_REASON = 1000;

  private final PopulationPorts ports;

  /** What a signed document says never changes. */
  private final Map<String, PopulationDocument> read = new ConcurrentHashMap<>();

  /** How the next dose of each preparation is chosen while these are signed. */
  private record Choices(List<Kept> all, Map<PreparationId, Choice> made) {}

  private volatile Choices choices = new Choices(List.of(), new ConcurrentHashMap<>());

  public Populations(PopulationPorts ports) {
    this.ports = ports;
  }

  /** The populations that were ever signed, in the order of their signatures. */
  public List<SignedPopulation> signed() {
    List<Kept> all = ports.shelf().all();
    return all.stream().map(kept -> signed(kept, all)).toList();
  }

  public Optional<SignedPopulation> find(String name, int version) {
    return signed().stream()
        .filter(one -> one.signed().name().equals(name) && one.signed().version() == version)
        .findFirst();
  }

  /** The population that is asked about courses with a preparation. */
  public Optional<SignedPopulation> inUseFor(PreparationId preparation) {
    List<Kept> all = ports.shelf().all();
    return deciding(preparation, all).map(kept -> signed(kept, all));
  }

  /** How the next dose of a preparation is chosen; the same as long as nothing else is signed. */
  public Choice choiceFor(PreparationId preparation) {
    List<Kept> all = ports.shelf().all();
    Choices kept = choices;
    if (!kept.all().equals(all)) {
      kept = new Choices(all, new ConcurrentHashMap<>());
      choices = kept;
    }
    return kept.made().computeIfAbsent(preparation, id -> choice(id, all));
  }

  private Choice choice(PreparationId preparation, List<Kept> all) {
    return deciding(preparation, all)
        .<Choice>map(one -> new ByRuleAndModel(signed(one, all).model()))
        .orElseGet(ByRule::new);
  }

  /**
   * The choice that a stored decision remembers.
   *
   * @param key as the decision says it
   */
  public Optional<Choice> choiceOf(String key) {
    var byRule = new ByRule();
    if (key.equals(byRule.key())) {
      return Optional.of(byRule);
    }
    return signed().stream()
        .<Choice>map(one -> new ByRuleAndModel(one.model()))
        .filter(choice -> choice.key().equals(key))
        .findFirst();
  }

  /** Whether a population in use can be asked about what a protocol is written for. */
  public boolean canKeepLimitsOf(Protocol protocol) {
    return signed().stream().flatMap(one -> one.inUseFor().stream()).anyMatch(protocol::isFor);
  }

  private SignedPopulation signed(Kept kept, List<Kept> all) {
    Signed signed = kept.signed();
    PopulationDocument document =
        read.computeIfAbsent(signed.document(), text -> ports.reader().read(text).orThrow());
    return new SignedPopulation(
        signed,
        document,
        reference(document).orElseThrow(),
        found(signed.preparations()),
        found(
            signed.preparations().stream()
                .filter(id -> deciding(id, all).equals(Optional.of(kept)))
                .toList()),
        kept.withdrawn());
  }

  private List<Preparation> found(List<PreparationId> ids) {
    return ids.stream().flatMap(id -> ports.preparations().apply(id).stream()).toList();
  }

  /** The population whose signature decides about a preparation, if it is still in use. */
  private static Optional<Kept> deciding(PreparationId preparation, List<Kept> all) {
    return all.reversed().stream()
        .filter(kept -> kept.signed().preparations().contains(preparation))
        .findFirst()
        .filter(kept -> kept.withdrawn().isEmpty())
        .filter(kept -> kept.signed().version() == newest(kept.signed().name(), all));
  }

  private static int newest(String name, List<Kept> all) {
    return all.stream()
        .map(Kept::signed)
        .filter(signed -> signed.name().equals(name))
        .mapToInt(Signed::version)
        .max()
        .orElse(0);
  }

  /** The preparation whose strength is 1: one that the clinic knows, or a published sample. */
  private Optional<Preparation> reference(PopulationDocument document) {
    return ports
        .preparations()
        .apply(new PreparationId(document.reference()))
        .or(() -> SamplePreparations.of(document.reference()));
  }

  /** The populations that come with the program. */
  public List<PopulationReader.Shipped> shipped() {
    return ports.reader().shipped();
  }

  /** A document as it is looked at before it is signed, or every fault of it. */
  public Reading<PopulationSheet> look(String document) {
    if (document.length() > LONGEST_DOCUMENT) {
      return Reading.refused(
          "The document is longer than " + LONGEST_DOCUMENT + " characters: nothing was read.");
    }
    return switch (ports.reader().read(document)) {
      case Reading.Refused<PopulationDocument> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<PopulationDocument> read ->
          reference(read.value())
              .map(reference -> Reading.of(sheet(read.value(), reference)))
              .orElseGet(() -> Reading.refused(noReference(read.value())));
    };
  }

  private PopulationSheet sheet(PopulationDocument document, Preparation reference) {
    return new PopulationSheet(
        document,
        reference,
        ports.kept().get().stream().map(one -> PopulationSheet.Fit.of(one, reference)).toList());
  }

  private String noReference(PopulationDocument document) {
    return "reference_preparation: \""
        + document.reference()
        + "\" is no preparation that is known here: give the id of one of the clinic's, or one of "
        + SamplePreparations.all().stream()
            .map(one -> one.id().value())
            .collect(Collectors.joining(", "));
  }

  /** Faults of a name for a document that is brought in. */
  public List<Fault> faultsOfName(String name) {
    if (!NAME.matcher(name).matches()) {
      return ofName(
          "name: \""
              + name
              + "\" was given: write small letters, digits and hyphens, such as our-men-2026");
    }
    return shipped().stream().anyMatch(one -> one.name().equals(name))
        ? ofName(
            "name: \"" + name + "\" is that of a population of the program: choose another name")
        : List.of();
  }

  private static List<Fault> ofName(String text) {
    return List.of(new Fault(NAME_FIELD, text));
  }

  /** Signs a population that comes with the program. */
  public Reading<SignedPopulation> signShipped(
      Account actor, String name, Set<PreparationId> preparations) {
    return shipped().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .map(
            one ->
                sign(
                    actor,
                    name,
                    look(one.document()),
                    new Asked(one.document(), preparations),
                    List.of()))
        .orElseGet(() -> Reading.refused("There is no such population: open the list again."));
  }

  /** A document that is brought in, as it is looked at, or every fault of it. */
  public Reading<PopulationSheet> lookBroughtIn(String document) {
    Reading<PopulationSheet> sheet = look(document);
    return sheet.found().filter(Populations::isFittedHere).isPresent()
        ? Reading.refused(
            "The document says that it was fitted here. Sign it where the fit was made, or take"
                + " \"fitted_here\" out to bring it in like any other.")
        : sheet;
  }

  private static boolean isFittedHere(PopulationSheet sheet) {
    return sheet.document().origin() == Origin.FITTED_HERE;
  }

  /** Signs a document that was brought in. */
  public Reading<SignedPopulation> signBroughtIn(
      Account actor, String name, String document, Set<PreparationId> preparations) {
    return sign(
        actor,
        name,
        lookBroughtIn(document),
        new Asked(document, preparations),
        faultsOfName(name));
  }

  /** Signs a document that was fitted to the clinic's own courses. */
  public Reading<SignedPopulation> signFitted(
      Account actor, String name, String document, Set<PreparationId> preparations) {
    return sign(actor, name, look(document), new Asked(document, preparations), faultsOfName(name));
  }

  /** What somebody asks to be signed, and for what. */
  private record Asked(String document, Set<PreparationId> preparations) {}

  private Reading<SignedPopulation> sign(
      Account actor,
      String name,
      Reading<PopulationSheet> sheet,
      Asked asked,
      List<Fault> earlier) {
    if (!actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused(NOT_ALLOWED);
    }
    var faults = new ArrayList<>(earlier);
    faults.addAll(sheet.placed());
    sheet.found().ifPresent(found -> faults.addAll(unfit(found, asked.preparations())));
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return ports
        .transactions()
        .inTransaction(
            () -> {
              int version = newest(name, ports.shelf().all()) + 1;
              List<PreparationId> ids =
                  sheet.orThrow().fits().stream()
                      .map(fit -> fit.preparation().id())
                      .filter(asked.preparations()::contains)
                      .toList();
              ports
                  .shelf()
                  .append(
                      new Signed(
                          name,
                          version,
                          asked.document(),
                          ids,
                          actor.id(),
                          ports.clock().instant()));
              return Reading.of(find(name, version).orElseThrow());
            });
  }

  /** Only what is known exactly can be signed for. */
  private static List<Fault> unfit(PopulationSheet sheet, Set<PreparationId> preparations) {
    if (preparations.isEmpty()) {
      return List.of(
          new Fault(
              PREPARATIONS_FIELD, "preparations: choose at least one for which it is signed"));
    }
    Set<PreparationId> fit =
        sheet.fits().stream()
            .filter(one -> one.strength().isPresent())
            .map(one -> one.preparation().id())
            .collect(Collectors.toUnmodifiableSet());
    return preparations.stream()
        .filter(id -> !fit.contains(id))
        .map(
            id ->
                "preparations: the strength of \""
                    + id.value()
                    + "\" is not known exactly here: choose from the list")
        .sorted()
        .map(text -> new Fault(PREPARATIONS_FIELD, text))
        .toList();
  }

  /** Takes a population out of use: no earlier one takes its place. */
  public Reading<SignedPopulation> withdraw(
      Account actor, String name, int version, String reason) {
    if (!actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused(NOT_ALLOWED);
    }
    if (reason.isBlank() || reason.length() > LONGEST_REASON) {
      return Reading.refused(
          "Write why it is withdrawn, in at most " + LONGEST_REASON + " characters.");
    }
    return ports
        .transactions()
        .inTransaction(
            () -> {
              Optional<SignedPopulation> found = find(name, version);
              if (found.isEmpty()) {
                return Reading.refused("There is no such population: open the list again.");
              }
              if (found.get().withdrawn().isPresent()) {
                return Reading.refused("It is withdrawn already: nothing was changed.");
              }
              ports
                  .shelf()
                  .withdraw(
                      name,
                      version,
                      new Withdrawn(actor.id(), ports.clock().instant(), reason.strip()));
              return Reading.of(find(name, version).orElseThrow());
            });
  }
}
