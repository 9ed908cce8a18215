package rungwise.web.start;

import java.util.List;
import java.util.function.Supplier;
import rungwise.clinic.protocols.Protocols;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Preparation;

/**
 * What a new course can be made of.
 *
 * @param preparations the clinic's preparations that are in use
 * @param barrels the syringes that the clinic keeps
 */
public record StartChoices(
    Supplier<List<Preparation>> preparations,
    Supplier<List<Barrel>> barrels,
    Protocols protocols) {}
