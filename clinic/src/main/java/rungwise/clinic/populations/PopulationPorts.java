package rungwise.clinic.populations;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * All that the use cases about populations need from outside.
 *
 * @param preparations finds every version of every preparation, withdrawn ones too
 * @param kept the preparations that may be planned now
 */
public record PopulationPorts(
    PopulationShelf shelf,
    PopulationReader reader,
    Function<PreparationId, Optional<Preparation>> preparations,
    Supplier<List<Preparation>> kept,
    Transactions transactions,
    InstantSource clock) {}
