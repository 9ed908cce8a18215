package rungwise.checks.topics;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.Form;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;

/** Until when a vial may be used. */
final class VialTopics {

  private VialTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("B.bud_date", "add_days", VialTopics::addDays)
        .on("B.in_use", "multi_dose_discard_date", VialTopics::discardDate)
        .on("B.effective_discard", "min_date", VialTopics::earliest);
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
}
