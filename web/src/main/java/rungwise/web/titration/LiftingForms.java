package rungwise.web.titration;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.clinic.sheet.LiftingView;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
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

  static LiftingForms of(LiftingView view, StartChoices choices) {
    return new LiftingForms(
        view,
        Field.of(Field.Kind.TEXT, "seenWords", "What you make of it")
            .withHint("One sentence, if there is something to say: it stays on record.")
            .optional(),
        view.corrections().size() < 2 ? Optional.empty() : Optional.of(which(view)),
        reason("confirmReason", "What shows that the first report was wrong"),
        Field.of(Field.Kind.DATE, "softDate", "Day on which he was seen or told to be soft")
            .optional(),
        Field.of(Field.Kind.TEXT, "softTime", "Time").withHint("Such as 23:30.").optional(),
        reason("reviewReason", "What the review found"),
        reference(choices),
        reason("pastReason", "How that is known"));
  }

  /** Whether anything waits for a prescriber. */
  public boolean isAsked() {
    return !view.flags().isEmpty()
        || view.isEndOpen()
        || !view.emergencies().isEmpty()
        || !view.corrections().isEmpty()
        || !view.past().isEmpty();
  }

  /** The same with what was typed into the review, shown again when it is refused. */
  LiftingForms withReview(String date, String time, String reason) {
    return new LiftingForms(
        view,
        seenWords,
        which,
        confirmReason,
        softDate.withValue(date),
        softTime.withValue(time),
        reviewReason.withValue(reason),
        reference,
        pastReason);
  }

  /** The same with what was typed about flagged reports, shown again when it is refused. */
  LiftingForms withSeen(String words) {
    return new LiftingForms(
        view,
        seenWords.withValue(words),
        which,
        confirmReason,
        softDate,
        softTime,
        reviewReason,
        reference,
        pastReason);
  }

  /** The same with the reason that was typed, shown again when it is refused. */
  LiftingForms withConfirmation(String correction, String reason) {
    return new LiftingForms(
        view,
        seenWords,
        which.map(choice -> choice.withPicked(Set.of(correction))),
        confirmReason.withValue(reason),
        softDate,
        softTime,
        reviewReason,
        reference,
        pastReason);
  }

  /** The same with what was typed of the time before the record. */
  LiftingForms withPast(String picked, String reason) {
    return new LiftingForms(
        view,
        seenWords,
        which,
        confirmReason,
        softDate,
        softTime,
        reviewReason,
        reference.withPicked(Set.of(picked)),
        pastReason.withValue(reason));
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
        "correction",
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
            "then no dose is closed for it",
            /* picked= */ false);
    return Choice.of(
        "reference",
        "Strength 1 in the history is",
        Stream.concat(preparations.stream(), Stream.of(nobody)).toList());
  }
}
