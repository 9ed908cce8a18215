package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.sheet.LiftingView;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/**
 * The forms by which a prescriber lifts what stops or closes.
 *
 * @param seenWords what a prescriber makes of flagged reports
 * @param which the corrections to choose from, where there are several
 * @param softDate asked where it is not on record how an emergency ended
 * @param reference what he was injected with before the record began
 */
public record LiftingForms(
    LiftingView view,
    Field seenWords,
    Optional<Choice> which,
    Field confirmReason,
    Field softDate,
    Field softTime,
    Field reviewReason,
    Choice reference,
    Field pastReason) {

  static final String NOBODY_CAN_TELL = "nobody_can_tell";

  static final String SEEN_WORDS = "seenWords";
  static final String CORRECTION = "correction";
  static final String CONFIRM_REASON = "confirmReason";
  static final String SOFT_DATE = "softDate";
  static final String SOFT_TIME = "softTime";
  static final String REVIEW_REASON = "reviewReason";
  static final String REFERENCE = "reference";
  static final String PAST_REASON = "pastReason";

  static LiftingForms of(LiftingView view, StartChoices choices) {
    return new LiftingForms(
        view,
        Field.of(Field.Kind.TEXT, SEEN_WORDS, "What you make of it")
            .withHint("One sentence, if there is something to say: it stays on record.")
            .optional(),
        view.corrections().size() < 2 ? Optional.empty() : Optional.of(which(view)),
        reason(CONFIRM_REASON, "What shows that the first report was wrong"),
        Field.of(Field.Kind.DATE, SOFT_DATE, "Day on which he was seen or told to be soft")
            .whereSaid(),
        Field.of(Field.Kind.TEXT, SOFT_TIME, "Time").withHint("Such as 23:30.").whereSaid(),
        reason(REVIEW_REASON, "What the review found"),
        reference(choices),
        reason(PAST_REASON, "How that is known"));
  }

  /** Whether anything waits for a prescriber. */
  public boolean isAsked() {
    return !view.flags().isEmpty()
        || view.isEndOpen()
        || !view.emergencies().isEmpty()
        || !view.corrections().isEmpty()
        || !view.past().isEmpty();
  }

  /** The same with what was typed into one of the forms, shown again when it is refused. */
  LiftingForms asTyped(Typed typed) {
    return new LiftingForms(
        view,
        seenWords.asTyped(typed),
        which.map(one -> one.asTyped(typed)),
        confirmReason.asTyped(typed),
        softDate.asTyped(typed),
        softTime.asTyped(typed),
        reviewReason.asTyped(typed),
        reference.asTyped(typed),
        pastReason.asTyped(typed));
  }

  /** The same with each fault at its field. */
  LiftingForms withFaults(Faults faults) {
    return new LiftingForms(
        view,
        seenWords.withFaults(faults),
        which.map(one -> one.withFaults(faults)),
        confirmReason.withFaults(faults),
        softDate.withFaults(faults),
        softTime.withFaults(faults),
        reviewReason.withFaults(faults),
        reference.withFaults(faults),
        pastReason.withFaults(faults));
  }

  private static Field reason(String name, String label) {
    return Field.of(Field.Kind.TEXT, name, label).withHint("One sentence: it stays on record.");
  }

  private static Choice which(LiftingView view) {
    return Choice.of(
        CORRECTION,
        "Which correction is right",
        view.corrections().stream()
            .map(one -> new Option(one.entry(), one.now(), "instead of: " + one.said(), false))
            .toList());
  }

  private static Choice reference(StartChoices choices) {
    List<Option> preparations =
        choices.preparations().get().stream()
            .map(one -> new Option(one.id().value(), one.name(), one.composition(), false))
            .toList();
    var nobody =
        new Option(
            NOBODY_CAN_TELL,
            "nobody can tell",
            "then every dose is closed until one is reopened, and 4 hours or more are reviewed",
            /* picked= */ false);
    return Choice.of(
        REFERENCE,
        "Strength 1 in the history is",
        Stream.concat(preparations.stream(), Stream.of(nobody)).toList());
  }
}
