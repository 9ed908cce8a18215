package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.quantities.Concentration;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What a label's protocol says: first dose, next dose, maximum, strengths, examinations. */
final class ProtocolTopics {

  private static final TimeSpan HOUR = TimeSpan.ofHours(1);
  private static final Set<String> POOR_RESPONSES = Set.of("none", "partial", "insufficient");
  private static final Volume MILLILITRE = Volume.ofMicrolitres(1000);

  private ProtocolTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("alprostadil start dose", ProtocolTopics::startDose)
        .on("alprostadil next dose", ProtocolTopics::nextDose)
        .on("alprostadil next dose", "allowed_next_range_mcg", ProtocolTopics::nextRange)
        .on("alprostadil next dose", "next_dose_mcg", ProtocolTopics::nextDose)
        .on("alprostadil next dose", "next_higher_dose_window_min", ProtocolTopics::window)
        .on("alprostadil next dose neurogenic", ProtocolTopics::nextDose)
        .on("alprostadil UK step range", "step_mcg", ProtocolTopics::stepRange)
        .on("alprostadil maximum dose", ProtocolTopics::maximum)
        .on("alprostadil strength choice", ProtocolTopics::strengthChoice)
        .on("follow-up interval", "review_every_months", ProtocolTopics::review)
        .on("advice threshold", "seek_care_after_h", ProtocolTopics::seekCare)
        .on("advice threshold", "report_after_h", ProtocolTopics::report);
  }

  private static Answer by(Input input, String name, Function<Protocol, Answer> answer) {
    String wanted = input.text(name);
    return SampleProtocol.of(wanted).map(answer).orElseGet(() -> SampleProtocol.none(wanted));
  }

  private static AetiologyGroup group(Input input) {
    return input.one("aetiology", ProtocolTopics::groupOf);
  }

  /** The rows join the two names that the labels use for one group. */
  private static Optional<AetiologyGroup> groupOf(String token) {
    return switch (token) {
      case "neurogenic_spinal_cord" -> Optional.of(AetiologyGroup.SPINAL_CORD);
      case "non_neurogenic" -> Optional.of(AetiologyGroup.VASCULOGENIC);
      default -> AetiologyGroup.of(token);
    };
  }

  private static Answer startDose(Input input) {
    onlyAlprostadil(input);
    return by(
        input,
        "jurisdiction",
        protocol -> SampleProtocol.micrograms(protocol.startFor(group(input)).amount()));
  }

  private static void onlyAlprostadil(Input input) {
    String agent = input.text("agent");
    if (!agent.equals("alprostadil")) {
      throw new InputFault("no sample protocol is for " + agent);
    }
  }

  /**
   * The rows give the time and the doses of the day too; the step does not depend on them. A label
   * that goes further after no response than after a partial one has that in its largest step; the
   * engine itself always proposes the smallest.
   */
  private static Answer nextDose(Input input) {
    input.note("aetiology", "hours_since", "minutes_since", "doses_in_24h");
    onlyPoorResponse(input);
    ProtocolAmount last = SampleProtocol.alprostadil(input, "last_dose_mcg");
    boolean isNone = input.find("response").filter("none"::equals).isPresent();
    return by(
        input,
        "label",
        protocol -> {
          Protocol.Step step = step(protocol, last);
          return SampleProtocol.micrograms(last.plus(isNone ? step.largest() : step.smallest()));
        });
  }

  /** How long after a dose without response a second one may follow. */
  private static Answer window(Input input) {
    boolean isNone = input.text("response").equals("none");
    return by(
        input,
        "label",
        protocol ->
            protocol
                .sameVisit()
                .filter(rule -> isNone && rule.afterNone())
                .<Answer>map(
                    rule ->
                        new Answer.Numbers(
                            List.of(BigDecimal.ZERO, new BigDecimal(rule.within().minutesText()))))
                .orElseThrow(() -> new InputFault("no second dose follows that response")));
  }

  /** The steps of a protocol away from its lowest doses. */
  private static Answer stepRange(Input input) {
    onlyAlprostadil(input);
    return by(
        input,
        "jurisdiction",
        protocol -> {
          Protocol.Step last = protocol.steps().getLast();
          return new Answer.Numbers(
              List.of(
                  SampleProtocol.micrograms(last.smallest()).value(),
                  SampleProtocol.micrograms(last.largest()).value()));
        });
  }

  /** A step up is the answer to a poor response only. */
  private static void onlyPoorResponse(Input input) {
    String response = input.text("response");
    if (!POOR_RESPONSES.contains(response)) {
      throw new InputFault("no step up follows the response " + response);
    }
  }

  private static Protocol.Step step(Protocol protocol, ProtocolAmount last) {
    return protocol
        .stepFrom(last)
        .orElseThrow(() -> new InputFault("the protocol has no step from " + last));
  }

  private static Answer nextRange(Input input) {
    input.note("aetiology", "hours_since");
    onlyPoorResponse(input);
    ProtocolAmount last = SampleProtocol.alprostadil(input, "last_dose_mcg");
    return by(
        input,
        "label",
        protocol -> {
          Protocol.Step step = step(protocol, last);
          BigDecimal low = SampleProtocol.micrograms(last.plus(step.smallest())).value();
          BigDecimal high = SampleProtocol.micrograms(last.plus(step.largest())).value();
          return new Answer.Numbers(List.of(low, high));
        });
  }

  private static Answer maximum(Input input) {
    return by(
        input,
        "label",
        protocol -> {
          ProtocolAmount most = protocol.ceiling().value();
          if (!input.has("requested_mcg")) {
            return SampleProtocol.micrograms(most);
          }
          ProtocolAmount requested = SampleProtocol.alprostadil(input, "requested_mcg");
          return Answer.words(requested.isMoreThan(most) ? "refuse" : "allowed");
        });
  }

  /** A strength is offered for a dose that its rule allows and that its maximum volume holds. */
  private static Answer strengthChoice(Input input) {
    ProtocolAmount dose = SampleProtocol.alprostadil(input, "dose_mcg");
    Preparation vial = vialOf(input.read("vial_mcg", Mass::parseMicrograms));
    boolean isTooLittle =
        SampleProtocol.usVialAndSyringe()
            .strengthRuleFor(vial)
            .filter(rule -> rule.notBelow().isMoreThan(dose))
            .isPresent();
    ExactVolume most = ExactVolume.of(vial.ceiling());
    boolean fits = dose.in(vial).orElseThrow().compareTo(most) <= 0;
    return Answer.words(!isTooLittle && fits ? "offered" : "not_offered");
  }

  /** A vial of the label, which is dissolved in 1 mL. */
  private static Preparation vialOf(Mass content) {
    Concentration strength = Concentration.of(content, MILLILITRE);
    return SamplePreparations.all().stream()
        .filter(one -> one.isOnly(Component.ALPROSTADIL))
        .filter(one -> one.ingredients().getFirst().strength().equals(strength))
        .findFirst()
        .orElseThrow(() -> new InputFault("no vial of " + content + " is known"));
  }

  private static Answer review(Input input) {
    onlyAlprostadil(input);
    return by(
        input, "jurisdiction", protocol -> Answer.number(protocol.limits().reviewMonths().value()));
  }

  private static Answer seekCare(Input input) {
    input.note("jurisdiction");
    String label = input.text("label");
    return !label.startsWith("cartridge") && SampleProtocol.of(label).isPresent()
        ? emergencyHours()
        : new Answer.NotBuilt("the emergency starts at 4 hours whatever the label " + label);
  }

  private static Answer report(Input input) {
    input.note("jurisdiction");
    return emergencyHours();
  }

  private static Answer emergencyHours() {
    return Answer.number(DurationLimits.EMERGENCY.value().ratioTo(HOUR));
  }
}
