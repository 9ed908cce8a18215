package rungwise.web.protocols;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Protocol;
import rungwise.dosing.source.Source;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;

/** The protocols, each with every rule and its source. */
public record ProtocolsPage(
    Faults faults, List<Sheet> signed, List<Sheet> samples, boolean maySign) {

  /** One rule of a protocol. */
  public record Rule(String what, String value, String source) {}

  /** One protocol. */
  public record Sheet(String title, String signPath, boolean isSample, List<Rule> rules) {
    public Sheet {
      rules = List.copyOf(rules);
    }
  }

  public ProtocolsPage {
    signed = List.copyOf(signed);
    samples = List.copyOf(samples);
  }

  static ProtocolsPage of(Protocols protocols, Account actor) {
    return new ProtocolsPage(
        Faults.NONE,
        protocols.signed().stream()
            .map(SignedProtocol::protocol)
            .map(ProtocolsPage::sheet)
            .toList(),
        protocols.unsignedSamples().stream().map(ProtocolsPage::sheet).toList(),
        actor.may(Role.PRESCRIBER) || actor.may(Role.PROGRAMME_LEAD));
  }

  ProtocolsPage with(List<String> found) {
    return new ProtocolsPage(
        new Faults(found.stream().map(Fault::ofForm).toList()), signed, samples, maySign);
  }

  private static Sheet sheet(Protocol protocol) {
    return new Sheet(
        protocol.title() + ", version " + protocol.version(),
        "/protocols/" + protocol.name() + "/" + protocol.version() + "/sign",
        protocol.sample(),
        rules(protocol));
  }

  private static List<Rule> rules(Protocol protocol) {
    var rules = new ArrayList<Rule>();
    for (Protocol.Start start : protocol.starts()) {
      String groups =
          start.groups().stream()
              .sorted()
              .map(AetiologyGroup::words)
              .collect(Collectors.joining(", "));
      rules.add(rule("First dose: " + groups, start.amount(), start.source()));
    }
    for (Protocol.Step step : protocol.steps()) {
      rules.add(
          rule(
              "Step from a dose of up to " + step.upTo(),
              step.smallest() + " is proposed; the source allows up to " + step.largest(),
              step.source()));
    }
    protocol
        .careAbove()
        .ifPresent(care -> rules.add(rule("Particular care above", care.value(), care.source())));
    protocol.sameVisit().ifPresent(same -> rules.add(sameVisit(same)));
    for (Protocol.StrengthRule strength : protocol.strengths()) {
      rules.add(rule("Least dose from the stronger vial", strength.notBelow(), strength.source()));
    }
    rules.add(rule("Maximum dose", protocol.ceiling().value(), protocol.ceiling().source()));
    rules.addAll(limits(protocol.limits()));
    return rules;
  }

  private static List<Rule> limits(Protocol.Limits limits) {
    return List.of(
        rule(
            "Wanted: usable for at most",
            limits.satisfactory().value(),
            limits.satisfactory().source()),
        rule("Minimum interval", limits.spacing().value(), limits.spacing().source()),
        rule(
            "Most injections in 168 hours",
            limits.inSevenDays().value(),
            limits.inSevenDays().source()),
        rule(
            "Follow-up exam, every",
            limits.reviewMonths().value() + " months",
            limits.reviewMonths().source()),
        rule(
            "An answer of the screening holds for",
            limits.screeningMonths().value() + " months",
            limits.screeningMonths().source()),
        rule(
            "A solution counts as fresh for",
            limits.freshDays().value() + " days",
            limits.freshDays().source()),
        rule(
            "Between a PDE5 inhibitor and an injection",
            limits.pde5Hours().value() + " hours",
            limits.pde5Hours().source()));
  }

  private static Rule sameVisit(Protocol.SameVisit same) {
    String after =
        (same.afterNone() ? "after no response" : "")
            + (same.afterNone() && same.afterPartialUpTo().isPresent() ? ", or " : "")
            + same.afterPartialUpTo()
                .map(most -> "after a partial response to at most " + most + ", soft again")
                .orElse("");
    return rule("Second dose in the same visit, within " + same.within(), after, same.source());
  }

  private static Rule rule(String what, Object value, Source source) {
    return new Rule(what, value.toString(), source.words());
  }
}
