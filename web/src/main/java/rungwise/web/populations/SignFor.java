package rungwise.web.populations;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.Populations;
import rungwise.dosing.known.PreparationId;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;

/** For which preparations a population is signed. */
public final class SignFor {

  private SignFor() {}

  /** The preparations whose strength is known exactly; empty if there are none. */
  public static List<Choice> choice(PopulationSheet sheet) {
    List<Option> options =
        sheet.fits().stream()
            .filter(fit -> fit.strength().isPresent())
            .map(
                fit ->
                    new Option(
                        fit.preparation().id().value(),
                        fit.preparation().toString(),
                        fit.words(),
                        false))
            .toList();
    return options.isEmpty()
        ? List.of()
        : List.of(Choice.of(Populations.PREPARATIONS_FIELD, "For which preparations", options));
  }

  /** The ids that were ticked. */
  public static Set<PreparationId> ids(Set<String> ticked) {
    return ticked.stream()
        .filter(id -> !id.isBlank())
        .map(PreparationId::new)
        .collect(Collectors.toUnmodifiableSet());
  }
}
