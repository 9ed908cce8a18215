package rungwise.clinic.call;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.Refusal;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Acidity;
import rungwise.quantities.Fault;
import rungwise.quantities.GasPressure;
import rungwise.quantities.Reading;

/** Reads what was typed of a rescue, some of it twice, and gathers every fault at its field. */
public final class RescueFields {

  public static final String STOCK = "stock";
  public static final String WAY = "way";
  public static final String WANTED = "wanted";
  public static final String STRENGTH = "strength";
  public static final String TOTAL = "total";
  public static final String DOSE = "dose";
  public static final String OXYGEN = "oxygen";
  public static final String CARBON_DIOXIDE = "carbon-dioxide";
  public static final String PH = "ph";

  private final UnaryOperator<String> said;
  private final List<Fault> faults = new ArrayList<>();

  /**
   * Fields of one form.
   *
   * @param said what was typed into a field, without the spaces around it
   */
  public RescueFields(UnaryOperator<String> said) {
    this.said = said;
  }

  /** The field in which the same is typed a second time. */
  public static String again(String field) {
    return field + "-again";
  }

  /** Every fault so far. */
  public List<Fault> faults() {
    return List.copyOf(faults);
  }

  public void add(Fault fault) {
    faults.add(fault);
  }

  /** Refusals at their fields; of a second typing at the second field. */
  public void add(List<Refusal> why) {
    why.forEach(one -> faults.add(fault(one)));
  }

  /** A field, and its second typing where something stands in it. */
  public <T> Optional<Twice<T>> twice(String field, Function<String, Typed<T>> reader) {
    Optional<T> once = read(field, reader.apply(said.apply(field)));
    String second = said.apply(again(field));
    if (second.isEmpty()) {
      return once.map(Twice::once);
    }
    Optional<T> again = read(again(field), reader.apply(second));
    return once.flatMap(value -> again.map(other -> Twice.both(value, other)));
  }

  /** A field that may be left empty. */
  public <T> Optional<T> ifTyped(String field, Function<String, Typed<T>> reader) {
    String text = said.apply(field);
    return text.isEmpty() ? Optional.empty() : read(field, reader.apply(text));
  }

  /** What was read. */
  public <T> Optional<T> read(String field, Typed<T> typed) {
    return switch (typed) {
      case Typed.Read<T> read -> Optional.of(read.value());
      case Typed.Refused<T> refused -> {
        faults.add(new Fault(field, refused.why().words()));
        yield Optional.empty();
      }
    };
  }

  /** What was read, or its faults with a full stop. */
  public <T> Optional<T> read(String field, Reading<T> reading) {
    reading.faults().forEach(text -> faults.add(new Fault(field, text + ".")));
    return reading.found();
  }

  /** A blood gas, where all of it was read. */
  public Optional<Gas> gas() {
    Optional<Twice<GasPressure>> oxygen = pressure(OXYGEN);
    Optional<Twice<GasPressure>> carbonDioxide = pressure(CARBON_DIOXIDE);
    Optional<Twice<Acidity>> ph = twice(PH, text -> typed(Asked.PH, Acidity.parse(text)));
    add(oxygen.map(Gas::ofOxygen).orElse(List.of()));
    add(carbonDioxide.map(Gas::ofCarbonDioxide).orElse(List.of()));
    add(ph.map(Gas::ofPh).orElse(List.of()));
    return oxygen.flatMap(
        first -> carbonDioxide.flatMap(second -> ph.map(third -> new Gas(first, second, third))));
  }

  private Optional<Twice<GasPressure>> pressure(String field) {
    return twice(field, text -> typed(Asked.OXYGEN, GasPressure.parse(text)));
  }

  private static <T> Typed<T> typed(Asked asked, Reading<T> reading) {
    return switch (reading) {
      case Reading.Read<T> read -> new Typed.Read<>(read.value(), read.notices());
      case Reading.Refused<T> refused ->
          new Typed.Refused<>(
              new Refusal.NotRead(asked, "", String.join(" ", refused.faults()) + "."));
    };
  }

  private static Fault fault(Refusal why) {
    String field =
        switch (why.asked()) {
          case STOCK -> STOCK;
          case WANTED -> WANTED;
          case IN_SYRINGE -> STRENGTH;
          case TOTAL -> TOTAL;
          case STEPS -> WAY;
          case DOSE -> DOSE;
          case OXYGEN -> OXYGEN;
          case CARBON_DIOXIDE -> CARBON_DIOXIDE;
          case PH -> PH;
        };
    boolean isOfAgain = why instanceof Refusal.TypeAgain || why instanceof Refusal.TwoDiffer;
    return new Fault(isOfAgain ? again(field) : field, why.words());
  }
}
