package rungwise.checks.topics;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.Form;
import rungwise.dosing.supply.DatingStandard;
import rungwise.dosing.supply.Draw;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.Overfill;
import rungwise.dosing.supply.Pace;
import rungwise.dosing.supply.Storage;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.supply.WarmSpell;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Until when a vial may be used. */
final class VialTopics {

  private static final int DAYS_IN_A_WEEK = 7;
  private static final long HOURS_IN_A_WEEK = 168;

  private VialTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("B.bud_date", "add_days", VialTopics::addDays)
        .on("B.in_use", "multi_dose_discard_date", VialTopics::discardDate)
        .on("B.effective_discard", "min_date", VialTopics::earliest)
        .on("B.bud_limit", "bud_limit", VialTopics::longest)
        .on("B.excursion", "discard_after_excursion", VialTopics::afterWarmth)
        .on("B.storage_range", "range_C", VialTopics::range)
        .on("B.storage_range", "crt_excursion_ok", VialTopics::straying)
        .on("G.doses", "doses_per_vial", VialTopics::doses)
        .on("G.overfill", "excess_volume_mL", in -> Answer.number(excess(in)))
        .on("G.overfill", "fill_volume_mL", in -> filled(in))
        .on("G.overfill", "plan_doses_on", VialTopics::plannedOn)
        .on("G.supply", "days_supply", in -> Answer.number(pace(in).daysOf(count(in, "doses"))))
        .on("G.supply", "usable_doses_before_discard", in -> Answer.number(use(in).used()))
        .on("G.supply", "wasted_doses", in -> Answer.number(use(in).wasted()))
        .on("G.supply", "refill_interval_days", VialTopics::refill)
        .on("G.supply", "max_doses_in_days", VialTopics::mostDoses)
        .on("G.supply", "min_vial_mL", VialTopics::leastVial)
        .on("G.cost", "cost_per_used_dose", VialTopics::costOfEach)
        .on("G.cost", "waste_pct", VialTopics::wastePercent);
  }

  private static Answer addDays(Input input) {
    input.note("op");
    return day(VialDates.inUseUntil(date(input, "start"), days(input, "days")));
  }

  private static Answer discardDate(Input input) {
    input.note("op");
    return day(VialDates.inUseUntil(date(input, "first_puncture"), days(input, "in_use_days")));
  }

  /** A label never names a day after the expiry of what is in the vial. */
  private static Answer earliest(Input input) {
    input.note("op");
    LocalDate made = date(input, "compounded");
    LocalDate label =
        Stream.of(
                VialDates.inUseUntil(made, days(input, "bud_days")),
                date(input, "ingredient_expiry"))
            .min(Comparator.naturalOrder())
            .orElseThrow();
    return day(
        new VialDates(
                Optional.of(made),
                label,
                Optional.of(Opening.on(date(input, "first_puncture"))),
                Optional.of(days(input, "in_use_days")))
            .end(new InUseRule.NotStated(), new Form.Solution(), ZoneOffset.UTC)
            .at()
            .atOffset(ZoneOffset.UTC)
            .toLocalDate()
            .minusDays(1));
  }

  private static LocalDate date(Input input, String name) {
    return LocalDate.parse(input.text(name));
  }

  private static int days(Input input, String name) {
    return input.decimal(name).intValueExact();
  }

  private static Answer day(LocalDate date) {
    return Answer.words(date.toString());
  }

  private static Storage storage(Input input) {
    return input.one(
        "storage",
        word ->
            Optional.ofNullable(
                Map.of(
                        "CRT", Storage.ROOM,
                        "refrigerator", Storage.REFRIGERATOR,
                        "freezer", Storage.FREEZER)
                    .get(word)));
  }

  private static Answer longest(Input input) {
    DatingStandard standard = input.one("category", category -> standard(category, input));
    return standard
        .longest(storage(input))
        .map(limit -> Duration.ofMillis(limit.value().milliseconds()))
        .map(limit -> Answer.words(written(limit, standard)))
        .orElseGet(() -> Answer.words("not listed"));
  }

  /** The table counts the first category in hours, the others in days. */
  private static String written(Duration limit, DatingStandard standard) {
    return standard == DatingStandard.CATEGORY_1 ? limit.toHours() + " h" : limit.toDays() + " d";
  }

  private static Optional<DatingStandard> standard(String category, Input input) {
    String way =
        String.join(
            " ",
            category,
            input.text("method"),
            input.text("sterility_test_passed"),
            input.text("components"));
    return Optional.ofNullable(
        Map.of(
                "1 any n/a n/a", DatingStandard.CATEGORY_1,
                "2 aseptic no sterile only", DatingStandard.ASEPTIC_OF_STERILE,
                "2 aseptic no one or more nonsterile", DatingStandard.ASEPTIC_OF_NONSTERILE,
                "2 aseptic yes any", DatingStandard.ASEPTIC_TESTED,
                "2 terminal no any", DatingStandard.TERMINAL,
                "2 terminal yes any", DatingStandard.TERMINAL_TESTED,
                "3 aseptic yes any", DatingStandard.CATEGORY_3_ASEPTIC,
                "3 terminal yes any", DatingStandard.CATEGORY_3_TERMINAL)
            .get(way));
  }

  private static Answer afterWarmth(Input input) {
    var spell = WarmSpell.of(days(input, "temp_C"), TimeSpan.ofHours(days(input, "hours")));
    return Answer.yesOrNo(spell.by(days(input, "label_max_C")) == WarmSpell.Rule.DISCARD);
  }

  private static Answer range(Input input) {
    Storage.Range range = storage(input).celsius().value();
    return Answer.words(range.least() + ".." + range.most());
  }

  private static Answer straying(Input input) {
    return Answer.yesOrNo(
        Storage.isStillRoom(
            input.decimal("temp_C").doubleValue(), input.decimal("mkt_C").doubleValue()));
  }

  /** A dead space or a purge may be nothing, which is no volume that can be typed. */
  private static Volume volume(Input input, String name) {
    return input.decimal(name).signum() == 0
        ? Volume.ZERO
        : input.read(name, Volume::parseMillilitres);
  }

  private static Answer doses(Input input) {
    var draw =
        new Draw(
            volume(input, "dose_mL"), volume(input, "dead_space_mL"), volume(input, "purge_mL"));
    return Answer.number(
        draw.dosesIn(volume(input, "withdrawable_mL"), volume(input, "hold_up_mL")));
  }

  private static Answer leastVial(Input input) {
    var draw =
        new Draw(volume(input, "dose_mL"), volume(input, "dead_mL"), volume(input, "purge_mL"));
    return Answer.number(
        Amounts.millilitres(draw.vialFor(count(input, "doses"), volume(input, "hold_up_mL"))));
  }

  private static BigDecimal excess(Input input) {
    return Overfill.excess(volume(input, "labelled_mL"))
        .map(found -> Amounts.millilitres(found.value()))
        .orElseThrow(() -> new InputFault("no excess is named for that volume"));
  }

  private static Answer filled(Input input) {
    return Answer.number(excess(input).add(Amounts.millilitres(volume(input, "labelled_mL"))));
  }

  /** A full vial of 5 mL gives 25 doses of 0.2 mL, and its excess of 0.3 mL no other. */
  private static Answer plannedOn(Input input) {
    input.note("labelled_or_filled");
    Volume labelled = Volume.ofMicrolitres(5000);
    var draw = new Draw(Volume.ofMicrolitres(200), Volume.ZERO, Volume.ZERO);
    boolean plain = draw.whole().times(draw.dosesIn(labelled, Volume.ZERO)).equals(labelled);
    return Answer.words(plain ? "labelled" : "filled");
  }

  private static Pace pace(Input input) {
    return new Pace(input.decimal("per_week").doubleValue());
  }

  private static long count(Input input, String name) {
    return input.decimal(name).longValueExact();
  }

  private static Pace.Used use(Input input) {
    return pace(input).use(count(input, "doses"), count(input, "in_use_days"));
  }

  /** A supply of so many days is one dose a day. */
  private static Answer refill(Input input) {
    return Answer.number(
        new Pace(DAYS_IN_A_WEEK)
            .daysToNext(count(input, "days_supply"), count(input, "in_use_days")));
  }

  private static Answer mostDoses(Input input) {
    if (count(input, "per_week_cap") * count(input, "min_gap_h") > HOURS_IN_A_WEEK) {
      throw new InputFault("so many injections do not fit into a week with that gap");
    }
    return Answer.number(new Pace(count(input, "per_week_cap")).dosesIn(count(input, "days")));
  }

  private static Answer costOfEach(Input input) {
    long used = count(input, "doses_used");
    return Answer.number(
        new Pace.Used(used, used).costOfEach(input.decimal("vial_cost").doubleValue()));
  }

  private static Answer wastePercent(Input input) {
    return Answer.number(
        new Pace.Used(count(input, "doses"), count(input, "used")).wastedPercent());
  }
}
