package rungwise.web.start;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import rungwise.clinic.course.Plan;
import rungwise.clinic.protocols.SignedProtocol;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrel;

/**
 * What a new course can be made of.
 *
 * @param preparations the clinic's preparations that are in use
 * @param barrels the syringes that the clinic keeps
 * @param protocols those that a course may begin to run by today
 * @param inUse whether a version of a preparation may be planned now
 * @param choices how the doses of a preparation are chosen
 */
public record StartChoices(
    Supplier<List<Preparation>> preparations,
    Supplier<List<Barrel>> barrels,
    Supplier<List<SignedProtocol>> protocols,
    Predicate<PreparationId> inUse,
    Function<PreparationId, Choice> choices) {

  /** The plan of a form's choices; empty if one of them is not on the clinic's lists. */
  public Optional<Plan> plan(String preparation, String barrel, String protocol) {
    return protocols.get().stream()
        .map(SignedProtocol::protocol)
        .filter(one -> one.key().equals(protocol))
        .filter(one -> !preparation.isBlank() && !barrel.isBlank())
        .findFirst()
        .map(one -> new Plan(new PreparationId(preparation), barrel, one.name(), one.version()));
  }
}
