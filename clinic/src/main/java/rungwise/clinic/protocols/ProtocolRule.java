package rungwise.clinic.protocols;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.protocol.Composition;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;

/**
 * One rule of a protocol in words.
 *
 * @param part which part of the document says it, such as "spacing_hours" or "start mixed"
 * @param what the rule's name
 * @param value what it says
 */
public record ProtocolRule(String part, String what, String value, Source source) {

  /** Every rule of a protocol, the first dose of each group on its own. */
  public static List<ProtocolRule> of(Protocol protocol) {
    return Stream.of(
            protocol.composition().stream().map(ProtocolRule::composition),
            Arrays.stream(AetiologyGroup.values()).map(group -> start(protocol, group)),
            steps(protocol).stream(),
            protocol.more().afterPartial().stream().map(ProtocolRule::afterPartial),
            protocol.strengths().stream().map(ProtocolRule::strength),
            Stream.of(limit("ceiling", "Maximum dose", protocol.ceiling())),
            protocol.componentLimits().stream().map(ProtocolRule::component),
            protocol.careAbove().stream()
                .map(care -> limit("care_above", "Particular care above", care)),
            protocol.sameVisit().stream().map(ProtocolRule::sameVisit),
            protocol.more().emergencyPlan().stream().map(ProtocolRule::planned),
            chances(protocol.chances()),
            Stream.of(CountedOption.values()).flatMap(option -> counted(option, protocol)))
        .flatMap(rules -> rules)
        .toList();
  }

  private static ProtocolRule composition(Composition said) {
    return new ProtocolRule(
        "composition",
        "Written for one composition, and for no other",
        said.toString(),
        new Source.Assumption("a volume means nothing without the composition it was written for"));
  }

  private static ProtocolRule start(Protocol protocol, AetiologyGroup group) {
    Protocol.Start start = protocol.startFor(group);
    return new ProtocolRule(
        "start " + group.token(),
        "First dose: " + group.words(),
        start.amount().toString(),
        start.source());
  }

  private static List<ProtocolRule> steps(Protocol protocol) {
    var rules = new ArrayList<ProtocolRule>();
    for (Protocol.Step step : protocol.steps()) {
      rules.add(
          new ProtocolRule(
              "steps",
              "Step from a dose of up to " + step.upTo(),
              step.smallest()
                  + " is proposed, after no response and after a partial one alike; the source"
                  + " would allow up to "
                  + step.largest(),
              step.source()));
    }
    return rules;
  }

  private static ProtocolRule afterPartial(Protocol.AfterPartial after) {
    return new ProtocolRule(
        "after_partial",
        "Partial responses in a row at the same dose before a step up",
        Integer.toString(after.responses()),
        after.source());
  }

  private static ProtocolRule strength(Protocol.StrengthRule rule) {
    return new ProtocolRule(
        "strengths",
        "Least dose from a vial of " + rule.strength(),
        rule.notBelow().toString(),
        rule.source());
  }

  private static ProtocolRule component(Protocol.ComponentLimit limit) {
    return new ProtocolRule(
        "component_limits",
        "Most of " + limit.component().fullName() + " in one injection",
        limit.most().in(limit.component().unit()),
        limit.source());
  }

  private static ProtocolRule planned(Sourced<String> asked) {
    return new ProtocolRule(
        "emergency_plan",
        "The emergency plan says as well: " + asked.value(),
        "before home use",
        asked.source());
  }

  private static ProtocolRule sameVisit(Protocol.SameVisit same) {
    String after =
        (same.afterNone() ? "after no response" : "")
            + (same.afterNone() && same.afterPartialUpTo().isPresent() ? ", or " : "")
            + same.afterPartialUpTo()
                .map(most -> "after a partial response to at most " + most + ", soft again")
                .orElse("");
    return new ProtocolRule(
        "same_visit",
        "Second dose in the same visit, within " + same.within(),
        after,
        same.source());
  }

  private static Stream<ProtocolRule> chances(Protocol.Chances chances) {
    return Stream.concat(
        chances.of120Minutes().stream()
            .map(one -> chance("Response model: most chance of 120 minutes or longer", one)),
        chances.of240Minutes().stream()
            .map(one -> chance("Response model: most chance of 240 minutes or longer", one)));
  }

  private static ProtocolRule chance(String what, Sourced<Integer> inThousand) {
    return new ProtocolRule("model", what, inThousand.value() + " in 1000", inThousand.source());
  }

  private static Stream<ProtocolRule> counted(CountedOption option, Protocol protocol) {
    return protocol.limits().found(option).stream()
        .map(
            found ->
                new ProtocolRule(
                    option.part(), option.words(), option.of(found.value()), found.source()));
  }

  private static ProtocolRule limit(String part, String what, Sourced<?> limit) {
    return new ProtocolRule(part, what, String.valueOf(limit.value()), limit.source());
  }
}
