package rungwise.clinic.fitting;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * A choice of courses as it was typed.
 *
 * @param reference the id of a preparation
 * @param groups tokens
 * @param from a day, or empty
 * @param to a day, or empty
 */
public record FitDraft(
    String reference, Set<String> groups, String from, String to, boolean countsFiles) {

  /** The names of the fields, which begin a fault. */
  public static final String REFERENCE = "reference";

  public static final String GROUPS = "groups";
  public static final String FROM = "from";
  public static final String TO = "to";

  public FitDraft {
    groups = Set.copyOf(groups);
  }

  /** The choice, or everything that is wrong with it. */
  Reading<FitChoice> read(Set<PreparationId> preparations) {
    var faults = new ArrayList<Fault>();
    Optional<PreparationId> chosen =
        preparations.stream().filter(id -> id.value().equals(reference)).findFirst();
    if (chosen.isEmpty()) {
      faults.add(new Fault(REFERENCE, REFERENCE + ": choose one of the preparations in the list"));
    }
    Set<AetiologyGroup> known =
        groups.stream()
            .flatMap(token -> AetiologyGroup.of(token).stream())
            .collect(Collectors.toUnmodifiableSet());
    if (known.isEmpty() || known.size() < groups.size()) {
      faults.add(new Fault(GROUPS, GROUPS + ": choose at least one from the list"));
    }
    Optional<LocalDate> first = day(FROM, from, faults);
    Optional<LocalDate> last = day(TO, to, faults);
    if (first.isPresent() && last.filter(first.get()::isAfter).isPresent()) {
      faults.add(
          new Fault(
              TO, TO + ": the last day is before the first: give a later one, or leave it empty"));
    }
    return faults.isEmpty()
        ? Reading.of(new FitChoice(chosen.orElseThrow(), known, first, last, countsFiles))
        : new Reading.Refused<>(faults);
  }

  private static Optional<LocalDate> day(String field, String text, List<Fault> faults) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    Reading<LocalDate> read = ClinicTime.readDate(text.strip());
    read.faults().forEach(fault -> faults.add(new Fault(field, field + ": " + fault)));
    return read.found();
  }
}
