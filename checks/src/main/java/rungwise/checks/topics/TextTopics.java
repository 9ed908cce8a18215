package rungwise.checks.topics;

import rungwise.dosing.syringe.UnitScale;
import rungwise.quantities.DoseTextLint;
import rungwise.quantities.Volume;

/** How a dose is written, and how it must not be. */
final class TextTopics {

  private TextTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("D.lint", "dose_text_lint", TextTopics::lint)
        .on("D.format", "format_volume", TextTopics::format);
  }

  private static Answer lint(Input input) {
    boolean isPlain = DoseTextLint.faultsInDose(input.text("text")).isEmpty();
    return Answer.words(isPlain ? "accept" : "reject");
  }

  private static Answer format(Input input) {
    Volume volume = input.read("mL", Volume::parseMillilitres);
    return Answer.words(UnitScale.U_100.wording(volume));
  }
}
