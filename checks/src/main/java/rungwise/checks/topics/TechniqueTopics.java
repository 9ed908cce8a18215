package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.history.Spot;
import rungwise.dosing.history.Technique;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.Carried;
import rungwise.quantities.ExactVolume;
import rungwise.quantities.Volume;

/** Where and how it is injected, and what carries over to another preparation. */
final class TechniqueTopics {

  private static final Volume MILLILITRE = Volume.ofMicrolitres(1000);

  private TechniqueTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("injection clock position", TechniqueTopics::position)
        .on("injection zone", TechniqueTopics::zone)
        .on("compression", "minutes", TechniqueTopics::compression)
        .on("needle", "length_inch", TechniqueTopics::needle)
        .on("strength switch", TechniqueTopics::strengthSwitch);
  }

  private static Answer position(Input input) {
    return Answer.words(
        Spot.standing(input.decimal("clock").intValueExact()) == Spot.Standing.RIGHT
            ? "allowed"
            : "refuse");
  }

  private static Answer zone(Input input) {
    input.note("source");
    return Answer.words(String.join("; ", Technique.ZONE.value()));
  }

  private static Answer compression(Input input) {
    input.note("source");
    return Answer.number(new BigDecimal(Technique.COMPRESSION.value().minutesText()));
  }

  private static Answer needle(Input input) {
    input.note("source");
    return Answer.words(
        Technique.NEEDLE_INCHES.value().stream()
            .map(BigDecimal::toPlainString)
            .collect(Collectors.joining(" or ")));
  }

  private static Optional<Preparation> mixtureOf(String token) {
    return switch (token) {
      case "trimix_30_1_10" -> Optional.of(SamplePreparations.THREE_DRUG);
      case "trimix_30_2_20" -> Optional.of(SamplePreparations.THREE_DRUG_STRONGER);
      case "trimix_bennett" -> Optional.of(SamplePreparations.THREE_DRUG_BENNETT);
      default -> Optional.empty();
    };
  }

  private static Answer strengthSwitch(Input input) {
    Preparation from = input.one("from", TechniqueTopics::mixtureOf);
    Preparation to = input.one("to", TechniqueTopics::mixtureOf);
    var carried = new Carried(from, input.read("from_ml", Volume::parseMillilitres));
    String match = input.text("match");
    ExactVolume volume =
        match.equals("no_component_increases")
            ? carried.most(to).orElseThrow()
            : carried.volumeFor(input.one("match", Component::of), to).orElseThrow();
    return Answer.number(volume.ratioTo(MILLILITRE));
  }
}
