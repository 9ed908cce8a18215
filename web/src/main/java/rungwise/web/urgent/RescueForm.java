package rungwise.web.urgent;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.DoseVolume;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.dosing.urgent.rescue.Refusal;
import rungwise.dosing.urgent.rescue.RescueSyringes;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Acidity;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.GasPressure;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;

/** The question as it stands in the address: fields by name, an absent one is empty. */
record RescueForm(Map<String, String> typed) {

  static final String STOCK = "stock";
  static final String WAY = "way";
  static final String WANTED = "wanted";
  static final String TOTAL = "total";
  static final String DOSE = "dose";
  static final String OXYGEN = "oxygen";
  static final String CARBON_DIOXIDE = "carbon-dioxide";
  static final String PH = "ph";
  private static final List<String> GAS = bothOf(OXYGEN, CARBON_DIOXIDE, PH);

  static final String TWO_STEPS = "two";
  static final String ONE_STEP = "one";
  static final String AS_LABELLED = "label";

  /** The field in which the same is typed a second time. */
  static String again(String field) {
    return field + "-again";
  }

  RescueForm {
    typed = Map.copyOf(typed);
  }

  /**
   * What came of the question.
   *
   * @param mixing how it is prepared, if that was asked and nothing is wrong with it
   * @param volume the volume of the dose, as for the mixing
   * @param gas what the blood gas says, if there was one
   */
  record Outcome(
      RescueForm form,
      Faults faults,
      Optional<Mixing> mixing,
      Optional<DoseVolume.Drawn> volume,
      Optional<GasReading> gas) {}

  String said(String field) {
    return typed.getOrDefault(field, "").strip();
  }

  /** Whether it was asked how it is prepared. */
  boolean asksToPrepare() {
    return typed.containsKey(STOCK);
  }

  /** Whether it was asked what a blood gas says. */
  boolean asksOfGas() {
    return typed.containsKey(OXYGEN);
  }

  /** What was typed into one of the two forms, to be sent along with the other. */
  List<HeldField> held(boolean ofGas) {
    return fields().stream()
        .filter(typed::containsKey)
        .filter(field -> GAS.contains(field) == ofGas)
        .map(field -> new HeldField(field, said(field)))
        .toList();
  }

  Outcome answer() {
    var faults = new ArrayList<Fault>();
    Optional<Mixing> mixing = Optional.empty();
    Optional<DoseVolume.Drawn> volume = Optional.empty();
    if (asksToPrepare()) {
      Optional<Twice<Mass>> dose = twice(DOSE, Typed::dose, faults);
      mixing = mixing(faults);
      volume = volume(dose, mixing.flatMap(RescueForm::given), faults);
    }
    Optional<GasReading> gas = asksOfGas() ? gas(faults) : Optional.empty();
    boolean isWhole = faults.isEmpty();
    return new Outcome(
        this,
        new Faults(faults).inOrderOf(fields()),
        mixing.filter(found -> isWhole),
        volume.filter(found -> isWhole),
        gas.filter(found -> isWhole));
  }

  /** All fields in the order of the page. */
  static List<String> fields() {
    return Stream.concat(bothOf(STOCK, WAY, WANTED, TOTAL, DOSE).stream(), GAS.stream()).toList();
  }

  private static List<String> bothOf(String... fields) {
    return Stream.of(fields).flatMap(field -> Stream.of(field, again(field))).toList();
  }

  private Optional<Mixing> mixing(List<Fault> faults) {
    Function<String, Typed<Concentration>> label = text -> Typed.strength(Asked.STOCK, text);
    Optional<Twice<Concentration>> stock = twice(STOCK, label, faults);
    if (said(WAY).equals(AS_LABELLED)) {
      return stock.map(Mixing::asLabelled).filter(found -> isPossible(found, faults));
    }
    Optional<Concentration> wanted =
        read(WANTED, Typed.strength(Asked.WANTED, said(WANTED)), faults);
    Optional<Volume> total = read(TOTAL, Volume.parse(said(TOTAL)), faults);
    Optional<Mixing.Way> way = way(faults);
    if (stock.isEmpty() || wanted.isEmpty() || total.isEmpty() || way.isEmpty()) {
      add(wanted.map(Mixing::unpublished).orElse(List.of()), faults);
      return Optional.empty();
    }
    var wish =
        new Mixing.Wish(
            stock.orElseThrow(), wanted.orElseThrow(), total.orElseThrow(), way.orElseThrow());
    return Optional.of(Mixing.mix(wish, RescueSyringes.USUAL))
        .filter(found -> isPossible(found, faults));
  }

  private Optional<Mixing.Way> way(List<Fault> faults) {
    return switch (said(WAY)) {
      case TWO_STEPS -> Optional.of(Mixing.Way.TWO_STEPS);
      case ONE_STEP -> Optional.of(Mixing.Way.ONE_STEP);
      default -> {
        faults.add(new Fault(WAY, "It was not chosen how it is prepared: choose one."));
        yield Optional.empty();
      }
    };
  }

  private static boolean isPossible(Mixing mixing, List<Fault> faults) {
    if (mixing instanceof Mixing.Refused refused) {
      add(refused.why(), faults);
      return false;
    }
    return true;
  }

  /** The strength that is given by it. */
  static Optional<Concentration> given(Mixing mixing) {
    return switch (mixing) {
      case Mixing.OneStep one -> Optional.of(one.step().mix().gives());
      case Mixing.TwoSteps two -> Optional.of(two.second().mix().gives());
      case Mixing.ReadyToUse ready -> Optional.of(ready.labelled());
      case Mixing.Refused refused -> Optional.empty();
    };
  }

  private static Optional<DoseVolume.Drawn> volume(
      Optional<Twice<Mass>> dose, Optional<Concentration> of, List<Fault> faults) {
    if (dose.isEmpty() || of.isEmpty()) {
      add(dose.map(DoseVolume::refusals).orElse(List.of()), faults);
      return Optional.empty();
    }
    return switch (DoseVolume.of(dose.orElseThrow(), of.orElseThrow(), RescueSyringes.USUAL)) {
      case DoseVolume.Drawn drawn -> Optional.of(drawn);
      case DoseVolume.Refused refused -> {
        add(refused.why(), faults);
        yield Optional.empty();
      }
    };
  }

  private Optional<GasReading> gas(List<Fault> faults) {
    Optional<Twice<GasPressure>> oxygen = pressure(OXYGEN, faults);
    Optional<Twice<GasPressure>> carbonDioxide = pressure(CARBON_DIOXIDE, faults);
    Optional<Twice<Acidity>> ph = twice(PH, text -> typed(Asked.PH, Acidity.parse(text)), faults);
    add(oxygen.map(Gas::ofOxygen).orElse(List.of()), faults);
    add(carbonDioxide.map(Gas::ofCarbonDioxide).orElse(List.of()), faults);
    add(ph.map(Gas::ofPh).orElse(List.of()), faults);
    return oxygen.flatMap(
        first ->
            carbonDioxide.flatMap(second -> ph.map(third -> new Gas(first, second, third).read())));
  }

  private Optional<Twice<GasPressure>> pressure(String field, List<Fault> faults) {
    return twice(field, text -> typed(Asked.OXYGEN, GasPressure.parse(text)), faults);
  }

  private static <T> Typed<T> typed(Asked asked, Reading<T> reading) {
    return switch (reading) {
      case Reading.Read<T> read -> new Typed.Read<>(read.value(), read.notices());
      case Reading.Refused<T> refused ->
          new Typed.Refused<>(
              new Refusal.NotRead(asked, "", String.join(" ", refused.faults()) + "."));
    };
  }

  /** A field, and its second typing where something stands in it. */
  private <T> Optional<Twice<T>> twice(
      String field, Function<String, Typed<T>> reader, List<Fault> faults) {
    Optional<T> once = read(field, reader.apply(said(field)), faults);
    String second = said(again(field));
    if (second.isEmpty()) {
      return once.map(Twice::once);
    }
    Optional<T> again = read(again(field), reader.apply(second), faults);
    return once.flatMap(value -> again.map(other -> Twice.both(value, other)));
  }

  private static <T> Optional<T> read(String field, Typed<T> typed, List<Fault> faults) {
    return switch (typed) {
      case Typed.Read<T> read -> Optional.of(read.value());
      case Typed.Refused<T> refused -> {
        faults.add(new Fault(field, refused.why().words()));
        yield Optional.empty();
      }
    };
  }

  private static <T> Optional<T> read(String field, Reading<T> reading, List<Fault> faults) {
    reading.faults().forEach(text -> faults.add(new Fault(field, text + ".")));
    return reading.found();
  }

  private static void add(List<Refusal> why, List<Fault> faults) {
    why.forEach(one -> faults.add(fault(one)));
  }

  /** A refusal at its field; of a second typing at the second field. */
  private static Fault fault(Refusal why) {
    String field =
        switch (why.asked()) {
          case STOCK -> STOCK;
          case WANTED, IN_SYRINGE -> WANTED;
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
