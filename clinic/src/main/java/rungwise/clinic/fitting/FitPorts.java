package rungwise.clinic.fitting;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.function.Supplier;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * All that the use cases about fits need from outside.
 *
 * @param courses every course as it is now
 * @param past histories from before the record
 * @param preparations finds every version of every preparation, withdrawn ones too
 * @param kept the preparations that may be planned now
 * @param workers opens those who work on one fit; closed when it ends
 * @param executor runs one fit at a time, beside what pages do
 */
public record FitPorts(
    Supplier<List<CourseState>> courses,
    PastHistories past,
    Populations populations,
    Function<PreparationId, Optional<Preparation>> preparations,
    Supplier<List<Preparation>> kept,
    FitWriter writer,
    Supplier<FitWorkers> workers,
    Executor executor,
    ClinicTime time) {}
