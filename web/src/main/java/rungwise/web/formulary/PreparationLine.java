package rungwise.web.formulary;

import java.util.List;
import java.util.stream.Collectors;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;

/** What a preparation holds and how far one may go with it, as lines of a page. */
public record PreparationLine(
    String name,
    String composition,
    List<String> strengths,
    String form,
    String ceiling,
    String atCeiling,
    String limits,
    String preservative) {

  public PreparationLine {
    strengths = List.copyOf(strengths);
  }

  static PreparationLine of(Preparation one) {
    return new PreparationLine(
        one.name(),
        one.composition(),
        one.ingredients().stream().map(part -> part.strengthWords() + " per mL").toList(),
        one.form().words(),
        one.ceiling().toString(),
        one.contentOf(one.ceiling()),
        limits(one),
        one.preservative().orElse("none named"));
  }

  private static String limits(Preparation one) {
    String entered =
        one.ingredients().stream()
            .filter(part -> part.limit().isPresent())
            .map(PreparationLine::limit)
            .collect(Collectors.joining(", "));
    return entered.isEmpty() ? "none entered" : entered;
  }

  private static String limit(Ingredient part) {
    return part.component().token() + " " + part.limit().orElseThrow().in(part.component().unit());
  }
}
