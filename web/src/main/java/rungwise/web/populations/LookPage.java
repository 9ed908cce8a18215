package rungwise.web.populations;

import java.util.List;
import java.util.Set;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.populations.Origin;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.PopulationWords;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;

/**
 * A population as it is looked at before it is signed.
 *
 * @param preparations the choice of those that it may be signed for; empty if there are none
 * @param others the other preparations of the clinic, each with why there is no forecast
 * @param groupsWithout the groups of which it says nothing
 * @param held what the form sends along: name and document, where it was brought in
 */
public record LookPage(
    Faults faults,
    String name,
    Origin origin,
    String reference,
    PopulationWords words,
    List<Choice> preparations,
    List<String> others,
    List<String> groupsWithout,
    String signPath,
    List<Held> held,
    boolean isLead) {

  /** The field of the preparations. */
  static final String PREPARATIONS = "preparations";

  /** A field that is sent along unseen. */
  public record Held(String name, String value) {}

  public LookPage {
    preparations = List.copyOf(preparations);
    others = List.copyOf(others);
    groupsWithout = List.copyOf(groupsWithout);
    held = List.copyOf(held);
  }

  static LookPage of(
      String name, PopulationSheet sheet, Account actor, String signPath, List<Held> held) {
    return new LookPage(
        Faults.NONE,
        name,
        sheet.document().origin(),
        sheet.reference().composition(),
        PopulationWords.of(sheet.document().population()),
        preparations(sheet),
        sheet.fits().stream()
            .filter(fit -> fit.strength().isEmpty())
            .map(fit -> fit.preparation() + ": it " + fit.words() + ".")
            .toList(),
        sheet.groupsWithout().stream().map(AetiologyGroup::words).toList(),
        signPath,
        held,
        actor.may(Role.PROGRAMME_LEAD));
  }

  LookPage with(List<String> found, Set<String> picked) {
    return new LookPage(
        new Faults(found.stream().map(LookPage::fault).toList()),
        name,
        origin,
        reference,
        words,
        preparations.stream().map(one -> one.withPicked(picked)).toList(),
        others,
        groupsWithout,
        signPath,
        held,
        isLead);
  }

  private static Fault fault(String text) {
    return text.startsWith(PREPARATIONS) ? new Fault(PREPARATIONS, text) : Fault.ofForm(text);
  }

  private static List<Choice> preparations(PopulationSheet sheet) {
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
        : List.of(Choice.of(PREPARATIONS, "For which preparations", options));
  }
}
