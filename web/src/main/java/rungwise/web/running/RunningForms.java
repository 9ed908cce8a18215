package rungwise.web.running;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.running.EndDraft;
import rungwise.clinic.standing.CourseChanges;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The forms of the page, as typed.
 *
 * @param pause why it is paused
 * @param resume why it goes on
 * @param reopen why it is opened again
 */
public record RunningForms(Field pause, Field resume, End end, Field reopen) {

  static final String PAUSE = "pauseReason";
  static final String RESUME = "resumeReason";
  static final String END = "endReason";
  static final String REOPEN = "reopenReason";

  /** How it ends. */
  public record End(
      Choice why, Field lastDose, Choice vials, Choice after, Field referredTo, Field reason) {

    /** Everything in the order of the page. */
    static final List<String> FIELDS =
        List.of(
            EndDraft.WHY,
            EndDraft.LAST_DOSE,
            EndDraft.VIALS,
            EndDraft.AFTER,
            EndDraft.REFERRED_TO,
            END);

    /** Whether it was sent and refused, so that it stands open. */
    public boolean isRefused() {
      return !(why.fault() + lastDose.fault() + vials.fault() + after.fault() + referredTo.fault())
              .isEmpty()
          || !reason.fault().isEmpty();
    }
  }

  /**
   * The forms.
   *
   * @param last the day of the last injection on record, such as "2026-03-02"; may be empty
   */
  static RunningForms of(Typed typed, Faults faults, String last) {
    return new RunningForms(
        reason(PAUSE, "Why it is paused", typed, faults)
            .withHint("Such as: admitted to hospital, injects again after the examination."),
        reason(RESUME, "Why it goes on", typed, faults),
        new End(
            choice(EndDraft.WHY, "Why it ends", EndReason.values(), EndReason::words)
                .asTyped(typed)
                .withFaults(faults),
            Field.of(Field.Kind.DATE, EndDraft.LAST_DOSE, "Day of his last injection")
                .withHint("Leave it empty if nobody knows.")
                .withValue(last)
                .optional()
                .asTyped(typed)
                .withFaults(faults),
            choice(EndDraft.VIALS, "His vials", VialsLeft.values(), VialsLeft::words)
                .asTyped(typed)
                .withFaults(faults),
            choice(
                    EndDraft.AFTER,
                    "Treatment after self-injection ends",
                    AfterEnd.values(),
                    AfterEnd::words)
                .asTyped(typed)
                .withFaults(faults),
            Field.of(Field.Kind.TEXT, EndDraft.REFERRED_TO, "Referred to")
                .withHint("Whom or where, for an implant or treatment elsewhere.")
                .optional()
                .asTyped(typed)
                .withFaults(faults),
            reason(END, "In your words", typed, faults)),
        reason(REOPEN, "Why it is opened again", typed, faults));
  }

  private static Field reason(String name, String label, Typed typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label).asTyped(typed).withFaults(faults);
  }

  private static <E extends Enum<E>> Choice choice(
      String name, String label, E[] all, Function<E, String> words) {
    return Choice.of(
        name,
        label,
        Arrays.stream(all)
            .map(one -> new Option(one.name(), words.apply(one), "", /* picked= */ false))
            .toList());
  }

  static EndDraft end(Typed typed) {
    return new EndDraft(
        typed.text(EndDraft.WHY),
        typed.text(EndDraft.LAST_DOSE),
        typed.text(EndDraft.VIALS),
        typed.text(EndDraft.AFTER),
        typed.text(EndDraft.REFERRED_TO),
        typed.text(END));
  }

  /** The page's field of a fault: each form has a reason of its own. */
  static Faults faults(List<rungwise.quantities.Fault> placed, String reason) {
    return Faults.of(placed, field -> field.equals(CourseChanges.REASON) ? reason : field);
  }
}
