package rungwise.dosing.urgent.rescue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;

/**
 * What was given and measured in one rescue. A dose that was given is always written, in any order,
 * however soon or large it was; both sides count together, because both reach the same blood.
 *
 * @param given the doses, kept in the order of their times
 * @param pressures when blood pressure was written, in any order
 * @param maoInhibitor whether he takes an MAO inhibitor
 * @param secondPerson who has read label and dilution besides the one who prepares
 */
public record RescueLog(
    List<Given> given,
    List<Instant> pressures,
    Answer maoInhibitor,
    Optional<String> secondPerson) {

  /** How old the first blood pressure may be when the first dose is asked for. */
  public static final Sourced<TimeSpan> FIRST_PRESSURE_WITHIN =
      new Sourced<>(
          RescueLimits.HOUR,
          new Source.Assumption("a pressure of the same rescue, not of a visit"));

  /** What somebody answered. */
  public enum Answer {
    NO,
    YES,
    NOT_KNOWN
  }

  /** Into which side. It is written and changes no sum. */
  public enum Side {
    LEFT,
    RIGHT,
    NOT_KNOWN
  }

  /**
   * A dose that went in.
   *
   * @param dose how much; empty if nobody can say
   * @param of the strength in the syringe; empty if nobody can say
   */
  public record Given(Optional<Mass> dose, Optional<Concentration> of, Instant at, Side side) {
    public Given {
      if (dose.filter(mass -> mass.picograms() == 0).isPresent()) {
        throw new IllegalArgumentException("bug: nothing was given at " + at);
      }
    }

    /** One of a strength that nobody asked about. */
    public Given(Mass dose, Instant at, Side side) {
      this(Optional.of(dose), Optional.empty(), at, side);
    }
  }

  /** What is to be looked at in a dose that was given. */
  public sealed interface Flag {

    Given given();

    /** Sooner after the one before than the floor. */
    record TooSoon(Given given, Given before) implements Flag {}

    /** More in the hour up to it than the clinic signed. */
    record TooMuch(Given given, Mass inTheHour) implements Flag {}

    /** Smaller or larger than any published dose. */
    record Unusual(Given given) implements Flag {}

    /** Out of a syringe that is stronger than anything published, as by a step left out. */
    record TooStrong(Given given, Concentration of) implements Flag {}

    /**
     * Less than the floor after others, into whichever side, and with them more than the largest
     * published dose: two halves are one dose.
     */
    record Together(Given given, Mass sum) implements Flag {}

    /** Nobody can say how much it was, so that no sum is known. */
    record AmountNotKnown(Given given) implements Flag {}
  }

  public RescueLog {
    given = given.stream().sorted(Comparator.comparing(Given::at)).toList();
    pressures = List.copyOf(pressures);
    secondPerson = secondPerson.map(String::strip).filter(name -> !name.isEmpty());
  }

  /** The same with a dose that was given, whenever it is written. */
  public RescueLog with(Given more) {
    return new RescueLog(
        Stream.concat(given.stream(), Stream.of(more)).toList(),
        pressures,
        maoInhibitor,
        secondPerson);
  }

  /** Whether a dose may be prepared at an instant, by what the clinic signed. */
  public LogVerdict next(Twice<Mass> dose, Instant at, RescueLimits limits) {
    var refused = new ArrayList<>(DoseVolume.refusals(dose));
    lastDose()
        .filter(last -> at.isBefore(RescueLimits.FLOOR.value().after(last)))
        .map(
            last ->
                new Refusal.TooSoon(
                    last, RescueLimits.FLOOR.value().after(last), RescueLimits.FLOOR.value()))
        .ifPresent(refused::add);
    if (!refused.isEmpty()) {
      return new LogVerdict.Refused(refused);
    }
    Mass sum = inLastHour(at).plus(dose.value());
    List<LogVerdict.Reason> reasons = reasons(sum, at, limits);
    return reasons.isEmpty() ? new LogVerdict.Allowed(sum) : new LogVerdict.Hold(sum, reasons);
  }

  private List<LogVerdict.Reason> reasons(Mass sum, Instant at, RescueLimits limits) {
    var reasons = new ArrayList<LogVerdict.Reason>();
    if (sum.isMoreThan(limits.inAnHour())) {
      reasons.add(new LogVerdict.Reason.OverLimit(sum, limits.inAnHour()));
    }
    unknownUpTo(at)
        .map(dose -> new LogVerdict.Reason.AmountNotKnown(dose.at()))
        .ifPresent(reasons::add);
    lastDose()
        .filter(last -> at.isBefore(limits.interval().after(last)))
        .map(last -> new LogVerdict.Reason.SoonerThanSigned(last, limits.interval().after(last)))
        .ifPresent(reasons::add);
    if (!isPressureWritten(at)) {
      reasons.add(new LogVerdict.Reason.PressureNotWritten(lastDose()));
    }
    if (maoInhibitor != Answer.NO) {
      reasons.add(new LogVerdict.Reason.MaoInhibitor(maoInhibitor));
    }
    if (secondPerson.isEmpty()) {
      reasons.add(new LogVerdict.Reason.NoSecondPerson());
    }
    return reasons;
  }

  /** When the last dose was given, by the times that were written. */
  private Optional<Instant> lastDose() {
    return given.isEmpty() ? Optional.empty() : Optional.of(given.getLast().at());
  }

  /** The first instant at which the next dose may be asked for; at once before the first. */
  public Optional<Instant> notBefore(RescueLimits limits) {
    return lastDose().map(limits.interval()::after);
  }

  private boolean isPressureWritten(Instant at) {
    return pressures.stream()
        .filter(written -> !written.isAfter(at))
        .anyMatch(
            written ->
                lastDose()
                    .map(written::isAfter)
                    .orElseGet(() -> isWithin(FIRST_PRESSURE_WITHIN.value(), written, at)));
  }

  /**
   * What was given in the hour that ends at an instant, both of its ends counted: at least that
   * where somebody could not say how much a dose was.
   */
  public Mass inLastHour(Instant at) {
    return sum(inHourUpTo(at));
  }

  private Stream<Given> inHourUpTo(Instant at) {
    return given.stream().filter(dose -> isWithin(RescueLimits.HOUR, dose.at(), at));
  }

  /** Whether somebody could not say how much a dose of that hour was. */
  public boolean isAmountUnknown(Instant at) {
    return unknownUpTo(at).isPresent();
  }

  private Optional<Given> unknownUpTo(Instant at) {
    return inHourUpTo(at).filter(dose -> dose.dose().isEmpty()).findFirst();
  }

  private static Mass sum(Stream<Given> doses) {
    return doses.flatMap(dose -> dose.dose().stream()).reduce(new Mass(0), Mass::plus);
  }

  private static boolean isWithin(TimeSpan span, Instant earlier, Instant at) {
    return !earlier.isAfter(at) && !span.after(earlier).isBefore(at);
  }

  /** What is to be looked at, in the order in which the doses were given. */
  public List<Flag> flags(RescueLimits limits) {
    var flags = new ArrayList<Flag>();
    for (int index = 0; index < given.size(); index++) {
      if (index > 0) {
        soon(index, flags);
      }
      flags.addAll(ofOne(given.get(index), limits));
    }
    return List.copyOf(flags);
  }

  private void soon(int index, List<Flag> flags) {
    Given dose = given.get(index);
    Given before = given.get(index - 1);
    if (!dose.at().isBefore(RescueLimits.FLOOR.value().after(before.at()))) {
      return;
    }
    flags.add(new Flag.TooSoon(dose, before));
    Mass sum =
        sum(
            given.subList(0, index + 1).stream()
                .filter(one -> dose.at().isBefore(RescueLimits.FLOOR.value().after(one.at()))));
    if (sum.isMoreThan(DoseVolume.MOST_DOSE.value())) {
      flags.add(new Flag.Together(dose, sum));
    }
  }

  private List<Flag> ofOne(Given dose, RescueLimits limits) {
    var flags = new ArrayList<Flag>();
    Mass sum = inLastHour(dose.at());
    if (sum.isMoreThan(limits.inAnHour())) {
      flags.add(new Flag.TooMuch(dose, sum));
    }
    if (dose.dose().filter(DoseVolume::isUnusual).isPresent()) {
      flags.add(new Flag.Unusual(dose));
    }
    dose.of()
        .filter(of -> of.compareTo(Mixing.MOST_GIVEN.value()) > 0)
        .ifPresent(of -> flags.add(new Flag.TooStrong(dose, of)));
    if (dose.dose().isEmpty()) {
      flags.add(new Flag.AmountNotKnown(dose));
    }
    return flags;
  }
}
