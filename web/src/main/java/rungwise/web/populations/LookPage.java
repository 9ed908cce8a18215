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
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;

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
    List<HeldField> held,
    boolean isLead) {

  public LookPage {
    preparations = List.copyOf(preparations);
    others = List.copyOf(others);
    groupsWithout = List.copyOf(groupsWithout);
    held = List.copyOf(held);
  }

  static LookPage of(
      String name, PopulationSheet sheet, Account actor, String signPath, List<HeldField> held) {
    return new LookPage(
        Faults.NONE,
        name,
        sheet.document().origin(),
        sheet.reference().composition(),
        PopulationWords.of(sheet.document().population()),
        SignFor.choice(sheet),
        sheet.fits().stream()
            .filter(fit -> fit.strength().isEmpty())
            .map(fit -> fit.preparation() + ": it " + fit.words() + ".")
            .toList(),
        sheet.groupsWithout().stream().map(AetiologyGroup::words).toList(),
        signPath,
        held,
        actor.may(Role.PROGRAMME_LEAD));
  }

  LookPage with(Faults found, Set<String> picked) {
    return new LookPage(
        found,
        name,
        origin,
        reference,
        words,
        preparations.stream().map(one -> one.withPicked(picked).withFaults(found)).toList(),
        others,
        groupsWithout,
        signPath,
        held,
        isLead);
  }
}
