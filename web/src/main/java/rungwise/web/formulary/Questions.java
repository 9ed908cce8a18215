package rungwise.web.formulary;

import java.util.List;
import java.util.Set;
import rungwise.clinic.formulary.PreparationDraft;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Field;

/** The questions that several forms about preparations ask. */
final class Questions {

  private Questions() {}

  /** How long an opened vial may be used; nothing is picked unless the person did. */
  static Choice inUse(String picked) {
    return Choice.of(
            PreparationDraft.IN_USE,
            "How long an opened vial may be used, as the pharmacy or the label says",
            List.of(
                new Option("single_use", "one injection, then it is thrown away", "", false),
                new Option(
                    "days",
                    "a number of days after opening",
                    "28 days belong only to a preserved vial whose maker says nothing else.",
                    false),
                new Option("not_stated", "nobody has said: ask the pharmacy", "", false)))
        .withPicked(Set.of(picked));
  }

  static Field inUseDays(String value) {
    return Field.of(Field.Kind.COUNT, PreparationDraft.IN_USE_DAYS, "Days after opening")
        .withHint("Only for a number of days, such as 28")
        .withValue(value)
        .whereSaid();
  }
}
