package rungwise.files;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.protocols.EarlierProtocol;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.protocol.ProtocolOptions;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** A protocol as a YAML document. */
public final class ProtocolFile {

  static final String OF = " of ";
  private static final int MOST_VERSIONS = 10_000;
  private static final int MOST_VISIT_MINUTES = 240;
  private static final int LONGEST_QUESTION = 80;

  private static final List<String> PARTS =
      List.of(
          "protocol",
          "version",
          "title",
          "sample",
          "holds_from",
          "for",
          "composition",
          "start",
          "steps",
          "after_partial",
          "strengths",
          "ceiling",
          "component_limits",
          "care_above",
          "same_visit",
          "emergency_plan",
          "model");

  private ProtocolFile() {}

  /** Of a document that is to be signed: the protocol, or every fault with its place. */
  public static Reading<Protocol> read(String yaml) {
    return read(yaml, ProtocolWhole::checkForSigning).map(EarlierProtocol::protocol);
  }

  /** Of a document that was signed, perhaps before a floor was, or a composition was asked for. */
  public static Reading<EarlierProtocol> readSigned(String yaml) {
    return read(yaml, (root, parts) -> {});
  }

  private static Reading<EarlierProtocol> read(String yaml, BiConsumer<Node, ProtocolParts> more) {
    Reading<Object> document = YamlText.read(yaml);
    if (document.found().isEmpty()) {
      return new Reading.Refused<>(document.placed());
    }
    Node root = Node.root(document.orThrow());
    Optional<EarlierProtocol> protocol = protocol(root, more);
    return root.faults().isEmpty()
        ? Reading.of(protocol.orElseThrow())
        : new Reading.Refused<>(root.faults());
  }

  private static Optional<EarlierProtocol> protocol(
      Node root, BiConsumer<Node, ProtocolParts> further) {
    root.onlyWith(
        Stream.concat(PARTS.stream(), Stream.of(CountedOption.values()).map(CountedOption::part))
            .toArray(String[]::new));
    var name = root.at("protocol").text();
    var version = root.at("version").wholeNumber(1, MOST_VERSIONS);
    var title = root.at("title").text();
    var sample = root.at("sample").yesOrNo();
    Set<Component> components =
        Set.copyOf(each(root.at("for"), node -> node.read(ProtocolFile::component)));
    List<Protocol.Start> starts = each(root.at("start"), ProtocolFile::start);
    List<Protocol.Step> steps = each(root.at("steps"), ProtocolFile::step);
    List<Protocol.StrengthRule> rules = eachIfPresent(root.at("strengths"), ProtocolFile::strength);
    var ceiling = limit(root.at("ceiling"));
    var limits = limits(root);
    var more = options(root);
    if (!root.faults().isEmpty()) {
      return Optional.empty();
    }
    var parts =
        new ProtocolParts(
            new ProtocolParts.Head(
                name.orElseThrow(),
                version.orElseThrow(),
                title.orElseThrow(),
                sample.orElseThrow()),
            components,
            starts,
            steps,
            rules,
            ceiling.orElseThrow(),
            limits.orElseThrow(),
            more);
    ProtocolWhole.check(root, parts);
    further.accept(root, parts);
    return root.faults().isEmpty() ? Optional.of(parts.protocol()) : Optional.empty();
  }

  private static ProtocolOptions options(Node root) {
    return new ProtocolOptions(
        ifPresent(root.at("holds_from"), node -> node.read(ProtocolFile::day)),
        ifPresent(root.at("care_above"), ProtocolFile::limit),
        eachIfPresent(root.at("component_limits"), ProtocolFile::componentLimit),
        ifPresent(root.at("same_visit"), ProtocolFile::sameVisit),
        eachIfPresent(root.at("emergency_plan"), ProtocolFile::planItem),
        ChancesPart.read(root.at("model")).orElse(Protocol.Chances.NOT_ASKED),
        ifPresent(root.at("after_partial"), ProtocolFile::afterPartial),
        ifPresent(root.at("composition"), CompositionPart::read));
  }

  private static Optional<Protocol.AfterPartial> afterPartial(Node node) {
    node.onlyWith("responses", "source");
    var responses = node.at("responses").wholeNumber(1, Protocol.AfterPartial.MOST);
    var source = source(node.at("source"));
    return responses.flatMap(count -> source.map(found -> new Protocol.AfterPartial(count, found)));
  }

  private static Reading<LocalDate> day(String text) {
    try {
      return Reading.of(LocalDate.parse(text));
    } catch (DateTimeParseException notADay) {
      return Reading.refused("\"" + text + "\" is not a day: write it as 2026-12-31");
    }
  }

  private static Optional<Protocol.ComponentLimit> componentLimit(Node node) {
    node.onlyWith("most", "source");
    var most = node.at("most").read(ProtocolFile::amount);
    var source = source(node.at("source"));
    if (most.isPresent() && most.get() instanceof ProtocolAmount.Content(var component, var mass)) {
      return source.map(found -> new Protocol.ComponentLimit(component, mass, found));
    }
    return most.isPresent()
        ? node.at("most").fault("must name a component, such as 20 mcg of alprostadil")
        : Optional.empty();
  }

  private static Optional<Sourced<String>> planItem(Node node) {
    node.onlyWith("ask", "source");
    var ask = node.at("ask").read(ProtocolFile::question);
    var source = source(node.at("source"));
    return ask.flatMap(text -> source.map(found -> new Sourced<>(text, found)));
  }

  private static Reading<String> question(String text) {
    return text.length() <= LONGEST_QUESTION
        ? Reading.of(text.strip())
        : Reading.refused("must be at most " + LONGEST_QUESTION + " characters long");
  }

  private static <T> Optional<T> ifPresent(Node node, Function<Node, Optional<T>> reader) {
    return node.isPresent() ? reader.apply(node) : Optional.empty();
  }

  private static <T> List<T> eachIfPresent(Node list, Function<Node, Optional<T>> reader) {
    return list.isPresent() ? each(list, reader) : List.of();
  }

  private static Optional<Protocol.SameVisit> sameVisit(Node node) {
    node.onlyWith("within_minutes", "after_none", "after_partial_up_to", "source");
    var within = node.at("within_minutes").wholeNumber(1, MOST_VISIT_MINUTES);
    var afterNone = node.at("after_none").yesOrNo();
    Node partial = node.at("after_partial_up_to");
    var upTo = ifPresent(partial, one -> one.read(ProtocolFile::amount));
    var source = source(node.at("source"));
    if (within.isEmpty() || afterNone.isEmpty() || source.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Protocol.SameVisit(
            TimeSpan.ofMinutes(within.get()), afterNone.get(), upTo, source.get()));
  }

  /** What could be read of each item; the node keeps the faults of the others. */
  private static <T> List<T> each(Node list, Function<Node, Optional<T>> reader) {
    return list.items().stream().flatMap(node -> reader.apply(node).stream()).toList();
  }

  private static Optional<Protocol.Limits> limits(Node root) {
    var said = new EnumMap<CountedOption, Sourced<Integer>>(CountedOption.class);
    for (CountedOption option : CountedOption.values()) {
      Node node = root.at(option.part());
      if (option.isNeeded() || node.isPresent()) {
        number(node, option.most()).ifPresent(number -> said.put(option, number));
      }
    }
    return root.faults().isEmpty() ? Optional.of(new Protocol.Limits(said)) : Optional.empty();
  }

  private static Optional<Protocol.Start> start(Node node) {
    node.onlyWith("groups", "dose", "source");
    Set<AetiologyGroup> groups =
        node.at("groups").items().stream()
            .flatMap(item -> item.read(ProtocolFile::group).stream())
            .collect(Collectors.toSet());
    var dose = node.at("dose").read(ProtocolFile::amount);
    var source = source(node.at("source"));
    return dose.flatMap(amount -> source.map(found -> new Protocol.Start(groups, amount, found)));
  }

  private static Optional<Protocol.Step> step(Node node) {
    node.onlyWith("up_to", "add", "add_at_most", "source");
    var upTo = node.at("up_to").read(ProtocolFile::amount);
    var smallest = node.at("add").read(ProtocolFile::amount);
    var largest = node.at("add_at_most").read(ProtocolFile::amount);
    var source = source(node.at("source"));
    if (upTo.isEmpty() || smallest.isEmpty() || largest.isEmpty() || source.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Protocol.Step(upTo.get(), smallest.get(), largest.get(), source.get()));
  }

  private static Optional<Protocol.StrengthRule> strength(Node node) {
    node.onlyWith("strength", "not_below", "source");
    var strength = node.at("strength").read(Concentration::parse);
    var notBelow = node.at("not_below").read(ProtocolFile::amount);
    var source = source(node.at("source"));
    if (strength.isEmpty() || notBelow.isEmpty() || source.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Protocol.StrengthRule(strength.get(), notBelow.get(), source.get()));
  }

  private static Optional<Sourced<ProtocolAmount>> limit(Node node) {
    node.onlyWith("dose", "source");
    var dose = node.at("dose").read(ProtocolFile::amount);
    var source = source(node.at("source"));
    return dose.flatMap(amount -> source.map(found -> new Sourced<>(amount, found)));
  }

  private static Optional<Sourced<Integer>> number(Node node, int most) {
    node.onlyWith("value", "source");
    var value = node.at("value").wholeNumber(1, most);
    var source = source(node.at("source"));
    return value.flatMap(number -> source.map(found -> new Sourced<>(number, found)));
  }

  static Optional<Source> source(Node node) {
    node.onlyWith("published", "place", "seen", "common_practice", "assumption");
    if (node.at("published").isPresent()) {
      var citation = node.at("published").read(ProtocolFile::citation);
      var place = node.at("place").text();
      var seen = node.at("seen").read(ProtocolFile::seen);
      if (citation.isEmpty() || place.isEmpty() || seen.isEmpty()) {
        return Optional.empty();
      }
      return Optional.of(new Source.Published(citation.get(), place.get(), seen.get()));
    }
    if (node.at("common_practice").isPresent()) {
      return node.at("common_practice").text().map(Source.CommonPractice::new);
    }
    if (node.at("assumption").isPresent()) {
      return node.at("assumption").text().map(Source.Assumption::new);
    }
    return node.fault("must say published with place and seen, or common_practice, or assumption");
  }

  /** "2.5 mcg of alprostadil", or "0.05 mL". */
  private static Reading<ProtocolAmount> amount(String text) {
    int of = text.indexOf(OF);
    if (of < 0) {
      return Volume.parse(text).map(ProtocolAmount.OfVolume::new);
    }
    return switch (component(text.substring(of + OF.length()))) {
      case Reading.Refused<Component> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<Component> component ->
          Mass.parse(text.substring(0, of))
              .map(mass -> new ProtocolAmount.Content(component.value(), mass));
    };
  }

  static Reading<Component> component(String name) {
    return Component.of(name.strip())
        .map(Reading::of)
        .orElseGet(() -> Reading.refused("\"" + name + "\" is not a component that is known here"));
  }

  private static Reading<AetiologyGroup> group(String token) {
    return AetiologyGroup.of(token)
        .map(Reading::of)
        .orElseGet(() -> Reading.refused("\"" + token + "\" is not a group that is known here"));
  }

  private static Reading<Citation> citation(String id) {
    return Citation.of(id)
        .map(Reading::of)
        .orElseGet(() -> Reading.refused("\"" + id + "\" is not a source that is listed"));
  }

  private static Reading<Seen> seen(String words) {
    return switch (words) {
      case "read" -> Reading.of(Seen.READ);
      case "secondary" -> Reading.of(Seen.READ_IN_SECONDARY_COPY);
      case "memory" -> Reading.of(Seen.FROM_MEMORY);
      case "derived" -> Reading.of(Seen.DERIVED);
      default -> Reading.refused("\"" + words + "\" must be read, secondary, memory or derived");
    };
  }
}
