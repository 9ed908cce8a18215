package rungwise.clinic.fitting;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;

/**
 * Which courses a fit is made from. A course is taken whole: reports that led to a dose belong to
 * what the dose says.
 *
 * @param reference the preparation whose strength is 1
 * @param groups at least one
 * @param from the first day on which a course may have begun; empty means any
 * @param to the last such day; empty means any
 * @param countsFiles whether histories count that were brought in without naming a preparation;
 *     their strengths are then taken as relative to the reference
 */
public record FitChoice(
    PreparationId reference,
    Set<AetiologyGroup> groups,
    Optional<LocalDate> from,
    Optional<LocalDate> to,
    boolean countsFiles) {

  public FitChoice {
    groups = Set.copyOf(groups);
  }

  /** Whether a course that began on a day may count. */
  boolean holds(Optional<LocalDate> began) {
    boolean isAnyDay = from.isEmpty() && to.isEmpty();
    return isAnyDay
        || began
            .filter(day -> from.filter(day::isBefore).isEmpty())
            .filter(day -> to.filter(day::isAfter).isEmpty())
            .isPresent();
  }
}
