package rungwise.web.formulary;

import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.people.Account;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** One preparation, whole. */
public record PreparationPage(
    String path,
    String name,
    String composition,
    List<Line> facts,
    Faults faults,
    boolean mayChange,
    Field reason) {

  /** One fact of it. */
  public record Line(String what, String value) {}

  public PreparationPage {
    facts = List.copyOf(facts);
  }

  static PreparationPage of(ClinicPreparation kept, Account actor) {
    Preparation one = kept.preparation();
    var facts = new ArrayList<Line>();
    facts.add(new Line("Form", one.form().words()));
    facts.add(new Line("Maximum volume of one injection", one.ceiling().toString()));
    facts.add(new Line("That holds", one.contentOf(one.ceiling())));
    for (Ingredient ingredient : one.ingredients()) {
      facts.add(
          new Line(
              "Most " + ingredient.component().token() + " in one injection",
              ingredient
                  .limit()
                  .map(most -> most.in(ingredient.component().unit()))
                  .orElse("no limit entered")));
    }
    facts.add(new Line("Preservative", one.preservative().orElse("none")));
    facts.add(new Line("Once opened", kept.inUse().words()));
    return new PreparationPage(
        "/preparations/" + one.id(),
        one.name(),
        one.composition(),
        facts,
        Faults.NONE,
        PreparationsPage.mayChange(actor),
        Field.of(Field.Kind.TEXT, "reason", "Reason"));
  }

  PreparationPage withFaults(List<String> found) {
    return new PreparationPage(
        path,
        name,
        composition,
        facts,
        new Faults(found.stream().map(Fault::ofForm).toList()),
        mayChange,
        reason);
  }
}
