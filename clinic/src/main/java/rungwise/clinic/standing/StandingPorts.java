package rungwise.clinic.standing;

import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.Transactions;
import rungwise.clinic.clock.ClockCheck;
import rungwise.clinic.clock.Present;
import rungwise.clinic.course.Courses;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.Protocols;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.supply.InUseRule;

/**
 * All that the use cases about a course need from outside.
 *
 * @param past what was brought in from before this record began
 * @param populations asks the response model, where one is signed for a preparation
 * @param preparations finds every version of every preparation, withdrawn ones too
 * @param labelled finds the preparation in use of which a vial's label has the composition
 * @param inUse how long a version of a preparation may be used once opened
 * @param recalled when a version of a preparation was taken out of use; empty if it was not
 * @param clockCheck what is believed of the clock
 */
public record StandingPorts(
    Courses courses,
    PastHistories past,
    Protocols protocols,
    Populations populations,
    Function<PreparationId, Optional<Preparation>> preparations,
    Function<String, Optional<Preparation>> labelled,
    Function<PreparationId, InUseRule> inUse,
    Function<PreparationId, Optional<Instant>> recalled,
    Transactions transactions,
    InstantSource clock,
    ClockCheck clockCheck,
    ClinicTime time) {

  /** What is told at an instant that the clock has said just now. */
  public Present present(Instant now) {
    return new Present(now, clockCheck.belief().isKnown());
  }

  /** The day that it is in the clinic. */
  public LocalDate today() {
    return time.today(clock);
  }
}
