package rungwise.dosing.urgent.rescue;

import java.util.ArrayList;
import java.util.List;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Acidity;
import rungwise.quantities.GasPressure;

/** A blood gas from the corpus cavernosum, as typed from the report. */
public record Gas(Twice<GasPressure> oxygen, Twice<GasPressure> carbonDioxide, Twice<Acidity> ph) {

  private static final Source CRITERIA =
      Source.secondary(Citation.BMJ_PRIAPISM, "pressures and pH of ischaemic priapism and not");

  /** Below it oxygen is ischaemic. */
  public static final Sourced<GasPressure> ISCHAEMIC_OXYGEN =
      new Sourced<>(GasPressure.ofMmhg(30), CRITERIA);

  /** Above it carbon dioxide is ischaemic. */
  public static final Sourced<GasPressure> ISCHAEMIC_CARBON_DIOXIDE =
      new Sourced<>(GasPressure.ofMmhg(60), CRITERIA);

  /** Below it the pH is ischaemic. */
  public static final Sourced<Acidity> ISCHAEMIC_PH = new Sourced<>(new Acidity(7_250), CRITERIA);

  /** Above it oxygen is non-ischaemic. */
  public static final Sourced<GasPressure> ARTERIAL_OXYGEN =
      new Sourced<>(GasPressure.ofMmhg(90), CRITERIA);

  /** Below it carbon dioxide is non-ischaemic. */
  public static final Sourced<GasPressure> ARTERIAL_CARBON_DIOXIDE =
      new Sourced<>(GasPressure.ofMmhg(40), CRITERIA);

  /** From it on a pH is "about 7.4", which is what the text says of the non-ischaemic one. */
  public static final Sourced<Acidity> ARTERIAL_PH_FROM =
      new Sourced<>(
          new Acidity(7_350), new Source.Assumption("\"about 7.4\" is read as 7.35 to 7.45"));

  /** Up to it, and not beyond. */
  public static final Sourced<Acidity> ARTERIAL_PH_TO =
      new Sourced<>(new Acidity(7_450), ARTERIAL_PH_FROM.source());

  private static final Source PLAUSIBLE =
      new Source.Assumption("beyond it a slip of the hand is likelier than such blood");

  /** Above it oxygen is typed twice. */
  public static final Sourced<GasPressure> MOST_OXYGEN =
      new Sourced<>(GasPressure.ofMmhg(300), PLAUSIBLE);

  /** Below it carbon dioxide is typed twice. */
  public static final Sourced<GasPressure> LEAST_CARBON_DIOXIDE =
      new Sourced<>(GasPressure.ofMmhg(5), PLAUSIBLE);

  /** Above it carbon dioxide is typed twice. */
  public static final Sourced<GasPressure> MOST_CARBON_DIOXIDE =
      new Sourced<>(GasPressure.ofMmhg(200), PLAUSIBLE);

  /** Below it the pH is typed twice. */
  public static final Sourced<Acidity> LEAST_PH = new Sourced<>(new Acidity(6_500), PLAUSIBLE);

  /** Above it the pH is typed twice. */
  public static final Sourced<Acidity> MOST_PH = new Sourced<>(new Acidity(7_800), PLAUSIBLE);

  /** What it says by the published limits. */
  public GasReading read() {
    List<Refusal> why = refusals();
    if (!why.isEmpty()) {
      return new GasReading.Refused(why);
    }
    List<Asked> ischaemic = ischaemic();
    List<Asked> arterial = arterial();
    int all = GasReading.CRITERIA;
    if (ischaemic.size() == all) {
      return new GasReading.Ischaemic();
    }
    return arterial.size() == all
        ? new GasReading.NonIschaemic()
        : new GasReading.Indeterminate(ischaemic, arterial);
  }

  private List<Refusal> refusals() {
    var why = new ArrayList<>(ofOxygen(oxygen));
    why.addAll(ofCarbonDioxide(carbonDioxide));
    why.addAll(ofPh(ph));
    return why;
  }

  /** What forbids to go by a pressure of oxygen as it was typed. */
  public static List<Refusal> ofOxygen(Twice<GasPressure> typed) {
    return typed.refusals(Asked.OXYGEN, typed.value().isMoreThan(MOST_OXYGEN.value()));
  }

  /** The same of carbon dioxide. */
  public static List<Refusal> ofCarbonDioxide(Twice<GasPressure> typed) {
    GasPressure carbon = typed.value();
    return typed.refusals(
        Asked.CARBON_DIOXIDE,
        carbon.isLessThan(LEAST_CARBON_DIOXIDE.value())
            || carbon.isMoreThan(MOST_CARBON_DIOXIDE.value()));
  }

  /** The same of the pH. */
  public static List<Refusal> ofPh(Twice<Acidity> typed) {
    return typed.refusals(
        Asked.PH,
        typed.value().isLessThan(LEAST_PH.value()) || typed.value().isMoreThan(MOST_PH.value()));
  }

  private List<Asked> ischaemic() {
    return met(
        oxygen.value().isLessThan(ISCHAEMIC_OXYGEN.value()),
        carbonDioxide.value().isMoreThan(ISCHAEMIC_CARBON_DIOXIDE.value()),
        ph.value().isLessThan(ISCHAEMIC_PH.value()));
  }

  private List<Asked> arterial() {
    return met(
        oxygen.value().isMoreThan(ARTERIAL_OXYGEN.value()),
        carbonDioxide.value().isLessThan(ARTERIAL_CARBON_DIOXIDE.value()),
        !ph.value().isLessThan(ARTERIAL_PH_FROM.value())
            && !ph.value().isMoreThan(ARTERIAL_PH_TO.value()));
  }

  private static List<Asked> met(boolean byOxygen, boolean byCarbonDioxide, boolean byPh) {
    var met = new ArrayList<Asked>();
    if (byOxygen) {
      met.add(Asked.OXYGEN);
    }
    if (byCarbonDioxide) {
      met.add(Asked.CARBON_DIOXIDE);
    }
    if (byPh) {
      met.add(Asked.PH);
    }
    return met;
  }
}
