package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Risk;
import rungwise.dosing.urgent.rescue.DoseVolume;
import rungwise.dosing.urgent.rescue.Gas;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.Mix;
import rungwise.dosing.urgent.rescue.Mixing;
import rungwise.dosing.urgent.rescue.PublishedScheme;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueSyringes;
import rungwise.dosing.urgent.rescue.Twice;
import rungwise.quantities.Acidity;
import rungwise.quantities.Concentration;
import rungwise.quantities.GasPressure;
import rungwise.quantities.Mass;
import rungwise.quantities.MassUnit;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** The rescue of a long erection: dilution, doses, the hour's sum, blood gas, risk by hours. */
final class UrgentTopics {

  private static final BigDecimal MINUTES_IN_AN_HOUR = BigDecimal.valueOf(60);
  private static final TimeSpan MINUTE = TimeSpan.ofMinutes(1);
  private static final List<String> HOW_MANY = List.of("none", "one", "two");

  private UrgentTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("EAU phenylephrine", "aliquot_mcg", UrgentTopics::doses)
        .on("EAU phenylephrine", "interval_min", UrgentTopics::interval)
        .on("EAU escalation", "consider_primary_implant", UrgentTopics::implant)
        .on("AUA phenylephrine", "dose_mcg_every_3_to_5_min", UrgentTopics::doses)
        .on("AUA phenylephrine", "volume_ml_per_dose", UrgentTopics::volumeAndTrial)
        .on("AUA counselling", "counsel_recovery_unlikely", UrgentTopics::unlikely)
        .on("phenylephrine dilution", UrgentTopics::dilution)
        .on("phenylephrine two-step dilution", UrgentTopics::twoSteps)
        .on("phenylephrine volume", UrgentTopics::volume)
        .on("phenylephrine doses under cap", UrgentTopics::dosesWithin)
        .on("time cap reached", UrgentTopics::lastAfter)
        .on("one-ampoule shortcut", UrgentTopics::shortcut)
        .on("corporal blood gas", UrgentTopics::gas)
        .on("risk by duration", UrgentTopics::risk);
  }

  private static PublishedScheme scheme(Input input) {
    input.note("question");
    return input.one(
        "guideline",
        token ->
            switch (token) {
              case "EAU" -> Optional.of(PublishedScheme.EAU);
              case "AUA", "AUA_SMSNA" -> Optional.of(PublishedScheme.AUA_SMSNA);
              default -> Optional.empty();
            });
  }

  private static Answer doses(Input input) {
    PublishedScheme scheme = scheme(input);
    BigDecimal least = Amounts.in(MassUnit.MICROGRAM, scheme.least());
    BigDecimal most = Amounts.in(MassUnit.MICROGRAM, scheme.most());
    return least.compareTo(most) == 0
        ? Answer.number(least)
        : new Answer.Numbers(List.of(least, most));
  }

  private static Answer interval(Input input) {
    PublishedScheme scheme = scheme(input);
    return new Answer.Numbers(List.of(minutes(scheme.soonest()), minutes(scheme.latest())));
  }

  private static Answer volumeAndTrial(Input input) {
    PublishedScheme scheme = scheme(input);
    input.note("question2");
    return new Answer.Numbers(
        List.of(
            Amounts.millilitres(scheme.eachVolume().orElseThrow()),
            minutes(scheme.tried().orElseThrow())));
  }

  private static BigDecimal minutes(TimeSpan span) {
    return BigDecimal.valueOf(span.ratioTo(MINUTE));
  }

  private static Answer dilution(Input input) {
    Concentration stock = input.read("stock_mg_ml", perMillilitre(MassUnit.MILLIGRAM));
    Concentration target = input.read("target_mcg_ml", perMillilitre(MassUnit.MICROGRAM));
    if (input.has("stock_ml")) {
      Volume of = input.read("stock_ml", Volume::parseMillilitres);
      Mix mix = Mix.ofStock(stock, of, target).orElseThrow();
      return named("total_ml", mix.total(), mix);
    }
    Volume total = input.read("total_ml", Volume::parseMillilitres);
    Mix mix = Mix.toTotal(stock, target, total).orElseThrow();
    return named("stock_ml", mix.stock(), mix);
  }

  private static Answer twoSteps(Input input) {
    Concentration between = input.read("intermediate_mcg_ml", perMillilitre(MassUnit.MICROGRAM));
    var wish =
        new Mixing.Wish(
            Twice.once(Mixing.USUAL_STOCK.value()),
            input.read("target_mcg_ml", perMillilitre(MassUnit.MICROGRAM)),
            input.read("total_ml", Volume::parseMillilitres),
            Mixing.Way.TWO_STEPS);
    if (Mixing.mix(wish, RescueSyringes.USUAL) instanceof Mixing.TwoSteps steps
        && steps.ifSecondIsLeftOut().equals(between)) {
      Mix second = steps.second().mix();
      return named("intermediate_ml", second.stock(), second);
    }
    throw new InputFault("the product prepares no such two steps: " + wish);
  }

  private static Answer named(String name, Volume volume, Mix mix) {
    return new Answer.Named(
        Map.of(name, Amounts.millilitres(volume), "saline_ml", Amounts.millilitres(mix.saline())));
  }

  private static Function<String, Reading<Concentration>> perMillilitre(MassUnit unit) {
    return text -> Concentration.parsePerMillilitre(unit, text);
  }

  private static Answer volume(Input input) {
    Mass dose = input.read("dose_mcg", Mass::parseMicrograms);
    Concentration of = input.read("conc_mcg_ml", perMillilitre(MassUnit.MICROGRAM));
    return switch (DoseVolume.of(Twice.once(dose), of, RescueSyringes.USUAL)) {
      case DoseVolume.Drawn drawn -> Answer.number(Amounts.millilitres(drawn.part().volume()));
      case DoseVolume.Refused refused -> throw new InputFault("refused: " + refused.why());
    };
  }

  private static Answer dosesWithin(Input input) {
    return Answer.number(
        limits(input, "cap_mcg_per_h").dosesWithin(input.read("dose_mcg", Mass::parseMicrograms)));
  }

  private static RescueLimits limits(Input input, String name) {
    return new RescueLimits(input.read(name, Mass::parseMicrograms), RescueLimits.FLOOR.value());
  }

  private static Answer lastAfter(Input input) {
    TimeSpan every = input.read("interval_min", TimeSpan::parseMinutes);
    Mass dose = input.read("dose_mcg", Mass::parseMicrograms);
    return Answer.number(
        minutes(limits(input, "cap_mcg").lastAfter(dose, every))
            .add(input.decimal("first_dose_min")));
  }

  /** What it holds; that it is never prepared is the product's own test. */
  private static Answer shortcut(Input input) {
    Mix mix =
        Mix.adding(
                input.read("stock_mg_ml", perMillilitre(MassUnit.MILLIGRAM)),
                input.read("ampoule_ml", Volume::parseMillilitres),
                input.read("saline_ml", Volume::parseMillilitres))
            .orElseThrow();
    Volume injected = input.read("inject_ml", Volume::parseMillilitres);
    return Answer.number(Amounts.in(MassUnit.MICROGRAM, mix.gives().in(injected)));
  }

  private static Answer gas(Input input) {
    var gas =
        new Gas(
            Twice.once(input.read("po2", UrgentTopics::mmhg)),
            Twice.once(input.read("pco2", UrgentTopics::mmhg)),
            Twice.once(input.read("ph", Acidity::parse)));
    return Answer.words(
        switch (gas.read()) {
          case GasReading.Ischaemic all -> "ischaemic";
          case GasReading.NonIschaemic all -> "non_ischaemic";
          case GasReading.Indeterminate some when some.isInconsistent() ->
              "indeterminate (pattern inconsistent; recheck sample)";
          case GasReading.Indeterminate some ->
              "indeterminate (" + HOW_MANY.get(some.ischaemic().size()) + " of three criteria)";
          case GasReading.Refused refused -> throw new InputFault("refused: " + refused.why());
        });
  }

  private static Reading<GasPressure> mmhg(String number) {
    return GasPressure.parse(number + " mmHg");
  }

  private static Answer risk(Input input) {
    return Answer.words(reached(input, "ischaemic_h").getLast().name().toLowerCase(Locale.ROOT));
  }

  private static Answer implant(Input input) {
    input.note("question", "guideline");
    return Answer.yesOrNo(
        reached(input, "priapism_duration_h").contains(Risk.CONSIDER_EARLY_IMPLANT));
  }

  private static Answer unlikely(Input input) {
    input.note("question", "guideline");
    return Answer.yesOrNo(
        reached(input, "priapism_duration_h").contains(Risk.FIBROSIS_RECOVERY_UNLIKELY));
  }

  private static List<Risk> reached(Input input, String name) {
    BigDecimal minutes = input.decimal(name).multiply(MINUTES_IN_AN_HOUR);
    TimeSpan lasted = TimeSpan.parseMinutes(minutes.stripTrailingZeros().toPlainString()).orThrow();
    return Risk.reached(new Elapsed.Known(lasted));
  }
}
