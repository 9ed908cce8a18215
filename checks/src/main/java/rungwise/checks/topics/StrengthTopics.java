package rungwise.checks.topics;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.strength.Arrhenius;
import rungwise.dosing.strength.Decay;
import rungwise.dosing.strength.Decay.Order;
import rungwise.dosing.strength.MeanKinetic;
import rungwise.dosing.strength.Measured;
import rungwise.dosing.strength.Measured.In;
import rungwise.dosing.strength.StrengthLimits;

/** What time and warmth take from a vial, and between which limits its strength must lie. */
final class StrengthTopics {

  private static final double HALF = 0.5;
  private static final double NINETY_PERCENT = 0.9;
  private static final double PERCENT = 100;
  private static final double HOURS_IN_A_DAY = 24;
  private static final double JOULES = 1000;
  private static final double CLOSE = 1e-6;
  private static final int DAYS_IN_A_WEEK = 7;
  private static final int FRIDGE = 4;

  private static final Map<String, In> MEDIA =
      Map.of("solution", In.SOLUTION, "lyophilised", In.DRIED, "saline pH 4.5", In.SALINE);

  private StrengthTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("B.potency", "potency_in_limits", StrengthTopics::inLimits)
        .on("B.mkt", "mean_kinetic_temperature_C", StrengthTopics::meanKinetic)
        .on("C.published", "percent_remaining", StrengthTopics::published)
        .on("trimix solution stability pct remaining", StrengthTopics::inTheFridge)
        .on("C.rate", "first_order_k", StrengthTopics::rate)
        .on("C.rate", "first_order_k_lower_bound", StrengthTopics::rate)
        .on("C.rate", "half_life_d", in -> timeTo(in, HALF))
        .on("C.t90", "t90_d", in -> timeTo(in, NINETY_PERCENT))
        .on("C.arrhenius", "t90_d", in -> timeTo(in, NINETY_PERCENT))
        .on("C.arrhenius", "activation_energy_kJ", StrengthTopics::energy)
        .on("C.arrhenius", "k_at_T", StrengthTopics::rateAt)
        .on("C.arrhenius", "extrapolate_below_freezing", StrengthTopics::belowFreezing)
        .on("C.arrhenius", "predicted_over_observed_k_37C", StrengthTopics::otherMedium)
        .on("C.remaining", "percent_remaining", StrengthTopics::remaining)
        .on("C.cumulative", "percent_remaining_two_temps", StrengthTopics::remainingOfTwo);
  }

  private static double number(Input input, String name) {
    return input.decimal(name).doubleValue();
  }

  private static Answer inLimits(Input input) {
    var limits = new StrengthLimits(input.decimal("low_pct"), input.decimal("high_pct"));
    boolean known =
        limits.equals(StrengthLimits.GENERAL.value())
            || limits.equals(StrengthLimits.ALPROSTADIL.value());
    if (!known) {
      throw new InputFault("the product has no such limits");
    }
    return Answer.yesOrNo(limits.hold(input.decimal("assay"), input.decimal("label")));
  }

  private static Answer meanKinetic(Input input) {
    double steepness = number(input, "dH_kJ_per_mol") / number(input, "R");
    if (Math.abs(steepness - MeanKinetic.STEEPNESS.value()) > CLOSE) {
      throw new InputFault("the product has another energy of activation");
    }
    return Answer.number(
        MeanKinetic.celsius(
            Arrays.stream(input.text("temps_C").split("\\|", -1)).map(Double::valueOf).toList()));
  }

  private static Answer published(Input input) {
    String condition = input.text("condition");
    In medium =
        MEDIA.entrySet().stream()
            .filter(one -> condition.startsWith(one.getKey() + " "))
            .map(Map.Entry::getValue)
            .findFirst()
            .orElseThrow(() -> new InputFault("nothing was measured in " + condition));
    String warmth = condition.replaceFirst("^.* (\\d+) C$", "$1");
    return percent(Measured.of(drug(input, "drug"), medium, Integer.parseInt(warmth), days(input)));
  }

  private static int days(Input input) {
    String time = input.text("time");
    int count = Integer.parseInt(time.replaceAll("[a-z]", ""));
    return switch (time.replaceAll("[0-9]", "")) {
      case "d" -> count;
      case "mo" -> Math.toIntExact(Math.round(count * 730.0 / 24));
      default -> throw new InputFault("no time is written like " + time);
    };
  }

  private static Answer inTheFridge(Input input) {
    int days = input.decimal("fridge_weeks").intValueExact() * DAYS_IN_A_WEEK;
    return percent(Measured.of(drug(input, "component"), In.SOLUTION, FRIDGE, days));
  }

  private static Component drug(Input input, String name) {
    return input.one(
        name,
        word ->
            Arrays.stream(Component.values()).filter(one -> one.token().equals(word)).findFirst());
  }

  private static Answer percent(Optional<Measured> found) {
    return Answer.number(
        found.orElseThrow(() -> new InputFault("that was not measured")).percent());
  }

  private static Answer rate(Input input) {
    input.note("unit");
    return Answer.number(
        Decay.leaving(Order.FIRST, number(input, "fraction"), number(input, "time")).perTime());
  }

  private static Decay decay(Input input, String name) {
    return new Decay(Order.FIRST, number(input, name));
  }

  private static Answer timeTo(Input input, double left) {
    return Answer.number(decay(input, "k_per_d").timeTo(left));
  }

  private static Answer energy(Input input) {
    input.note("R");
    return Answer.number(
        Arrhenius.through(
                number(input, "T1_C"), number(input, "k1"),
                number(input, "T2_C"), number(input, "k2"))
            .kilojoulesPerMole());
  }

  private static Answer rateAt(Input input) {
    var line =
        new Arrhenius(number(input, "Tref_C"), number(input, "k_ref"), number(input, "Ea_kJ"));
    return Answer.number(at(line, number(input, "T_C")));
  }

  private static double at(Arrhenius line, double celsius) {
    return line.perTimeAt(celsius)
        .orElseThrow(() -> new InputFault("no rate is worked out at " + celsius));
  }

  private static Arrhenius measured() {
    Measured warm = Measured.ALPROSTADIL_WARM;
    Measured cold = Measured.ALPROSTADIL_COLD;
    return Arrhenius.through(
        warm.celsius(), warm.decay().perTime(), cold.celsius(), cold.decay().perTime());
  }

  private static Answer belowFreezing(Input input) {
    input.note("op");
    return Answer.words(measured().perTimeAt(-1).isEmpty() ? "refuse" : "extrapolate");
  }

  private static Answer otherMedium(Input input) {
    double predicted = at(measured(), Measured.ALPROSTADIL_IN_SALINE.celsius());
    if (Math.abs(predicted - number(input, "predicted")) > 1 / JOULES) {
      throw new InputFault("the product predicts another rate: " + predicted);
    }
    return Answer.number(predicted / number(input, "observed"));
  }

  private static Answer remaining(Input input) {
    return Answer.number(decay(input, "k_per_d").left(number(input, "days")) * PERCENT);
  }

  /** The cold goes on all day; so does the row's sum of both. */
  private static Answer remainingOfTwo(Input input) {
    double days = number(input, "days");
    double warm = days * number(input, "warm_hours_per_day") / HOURS_IN_A_DAY;
    double left = decay(input, "k_cold").left(days - warm) * decay(input, "k_warm").left(warm);
    return Answer.number(left * PERCENT);
  }
}
