package rungwise.web.urgent;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.call.RescueFields;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.DoseVolume;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.dosing.urgent.rescue.RescueSyringes;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.dosing.urgent.rescue.Typed;
import rungwise.quantities.Concentration;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Volume;
import rungwise.web.page.Faults;
import rungwise.web.page.HeldField;

/** The question as it stands in the address: fields by name, an absent one is empty. */
record RescueForm(Map<String, String> typed) {

  static final String STOCK = RescueFields.STOCK;
  static final String WAY = RescueFields.WAY;
  static final String WANTED = RescueFields.WANTED;
  static final String TOTAL = RescueFields.TOTAL;
  static final String DOSE = RescueFields.DOSE;
  static final String OXYGEN = RescueFields.OXYGEN;
  static final String CARBON_DIOXIDE = RescueFields.CARBON_DIOXIDE;
  static final String PH = RescueFields.PH;
  private static final List<String> GAS = bothOf(OXYGEN, CARBON_DIOXIDE, PH);

  static final String TWO_STEPS = "two";
  static final String ONE_STEP = "one";
  static final String AS_LABELLED = "label";

  /** The field in which the same is typed a second time. */
  static String again(String field) {
    return RescueFields.again(field);
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
    var faults = new RescueFields(this::said);
    Optional<Mixing> mixing = Optional.empty();
    Optional<DoseVolume.Drawn> volume = Optional.empty();
    if (asksToPrepare()) {
      Optional<Twice<Mass>> dose = faults.twice(DOSE, Typed::dose);
      mixing = mixing(faults);
      volume = volume(dose, mixing.flatMap(RescueForm::given), faults);
    }
    Optional<GasReading> gas = asksOfGas() ? faults.gas().map(Gas::read) : Optional.empty();
    boolean isWhole = faults.faults().isEmpty();
    return new Outcome(
        this,
        new Faults(faults.faults()).inOrderOf(fields()),
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

  private Optional<Mixing> mixing(RescueFields faults) {
    Function<String, Typed<Concentration>> label = text -> Typed.strength(Asked.STOCK, text);
    Optional<Twice<Concentration>> stock = faults.twice(STOCK, label);
    if (said(WAY).equals(AS_LABELLED)) {
      return stock.map(Mixing::asLabelled).filter(found -> isPossible(found, faults));
    }
    Optional<Concentration> wanted =
        faults.read(WANTED, Typed.strength(Asked.WANTED, said(WANTED)));
    Optional<Volume> total = faults.read(TOTAL, Volume.parse(said(TOTAL)));
    Optional<Mixing.Way> way = way(faults);
    if (stock.isEmpty() || wanted.isEmpty() || total.isEmpty() || way.isEmpty()) {
      faults.add(wanted.map(Mixing::unpublished).orElse(List.of()));
      return Optional.empty();
    }
    var wish =
        new Mixing.Wish(
            stock.orElseThrow(), wanted.orElseThrow(), total.orElseThrow(), way.orElseThrow());
    return Optional.of(Mixing.mix(wish, RescueSyringes.USUAL))
        .filter(found -> isPossible(found, faults));
  }

  private Optional<Mixing.Way> way(RescueFields faults) {
    return switch (said(WAY)) {
      case TWO_STEPS -> Optional.of(Mixing.Way.TWO_STEPS);
      case ONE_STEP -> Optional.of(Mixing.Way.ONE_STEP);
      default -> {
        faults.add(new Fault(WAY, "It was not chosen how it is prepared: choose one."));
        yield Optional.empty();
      }
    };
  }

  private static boolean isPossible(Mixing mixing, RescueFields faults) {
    if (mixing instanceof Mixing.Refused refused) {
      faults.add(refused.why());
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
      Optional<Twice<Mass>> dose, Optional<Concentration> of, RescueFields faults) {
    if (dose.isEmpty() || of.isEmpty()) {
      faults.add(dose.map(DoseVolume::refusals).orElse(List.of()));
      return Optional.empty();
    }
    return switch (DoseVolume.of(dose.orElseThrow(), of.orElseThrow(), RescueSyringes.USUAL)) {
      case DoseVolume.Drawn drawn -> Optional.of(drawn);
      case DoseVolume.Refused refused -> {
        faults.add(refused.why());
        yield Optional.empty();
      }
    };
  }
}
