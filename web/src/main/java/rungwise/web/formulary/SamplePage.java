package rungwise.web.formulary;

import java.util.List;
import java.util.Set;
import rungwise.clinic.formulary.SampleDraft;
import rungwise.dosing.known.Preparation;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** One published composition, to be compared with a label before it is kept. */
public record SamplePage(
    String path,
    PreparationLine one,
    Faults faults,
    Choice inUse,
    Field inUseDays,
    Choice compared) {

  static SamplePage of(Preparation sample, SampleDraft draft, Faults faults) {
    return new SamplePage(
        "/preparations/samples/" + sample.id(),
        PreparationLine.of(sample),
        faults,
        Questions.inUse(draft.inUse()).withFaults(faults),
        Questions.inUseDays(draft.inUseDays())
            .withHint(
                "Only for a number of days. No preservative is named here: it must be the"
                    + " pharmacy's own answer")
            .withFaults(faults),
        compared(draft.isCompared()).withFaults(faults));
  }

  private static Choice compared(boolean isCompared) {
    var option =
        new Option(
            "yes", "Every component and every strength is the same as on my label", "", false);
    return Choice.of(SampleDraft.COMPARED, "Compared with the label in my hand", List.of(option))
        .withPicked(isCompared ? Set.of("yes") : Set.of());
  }
}
