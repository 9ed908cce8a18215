package rungwise.clinic.titration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.VialLabels;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.TimeSpan;

/** Reads what a report may say besides, and asks back what contradicts the rest of it. */
record DetailsReading(ReportDraft draft, PartFaults faults) {

  private static final int LONGEST_TABLETS = 200;
  private static final TimeSpan NO_TIME = TimeSpan.ofMinutes(0);

  InjectionDetails read(CourseFile file, Optional<Grade> grade, Optional<SoftAfter> soft) {
    Optional<TimeSpan> onset = minutes("Onset", ReportPart.ONSET);
    Optional<TimeSpan> usable = minutes("Usable for", ReportPart.USABLE);
    grade.ifPresent(firm -> notFirmerThanItWas(firm, onset, usable));
    soft.ifPresent(end -> notLongerThanItLasted(end, onset, usable));
    Optional<Spot> spot =
        faults
            .take(
                ReportPart.SIDE,
                FormChoices.spot(draft.text(ReportPart.SIDE), draft.text(ReportPart.HOUR)))
            .orElse(Optional.empty());
    Optional<Integer> pain =
        faults
            .take(ReportPart.PAIN, FormChoices.pain(draft.text(ReportPart.PAIN)))
            .orElse(Optional.empty());
    Optional<EntryId> vial = vial(file);
    String tablets = draft.text(ReportPart.OTHER_TABLETS).strip();
    if (tablets.length() > LONGEST_TABLETS) {
      faults.add(
          ReportPart.OTHER_TABLETS,
          "Other tablets: write at most " + LONGEST_TABLETS + " characters.");
    }
    Answer second = answer(ReportPart.SECOND_DOSE);
    if (second == Answer.YES) {
      faults.notice("He injected a second time that day: enter that injection as a report too.");
    }
    return faults.isEmpty()
        ? new InjectionDetails(
            onset,
            usable,
            spot,
            pain,
            answer(ReportPart.BRUISE),
            answer(ReportPart.AROUSED),
            FormChoices.wrong(draft.all(ReportPart.WRONG)),
            vial,
            tablets,
            second)
        : InjectionDetails.NONE;
  }

  private Optional<TimeSpan> minutes(String what, ReportPart part) {
    String text = draft.text(part);
    if (text.isBlank()) {
      return Optional.empty();
    }
    var reading = TimeSpan.parseMinutesFromZero(text);
    reading.faults().forEach(fault -> faults.add(part, what + ": " + fault));
    return reading.found();
  }

  /** Firm is rigidity 2 or more, usable is 3 or more. */
  private void notFirmerThanItWas(
      Grade grade, Optional<TimeSpan> onset, Optional<TimeSpan> usable) {
    boolean wasFirm = grade.number() >= Grade.FIRM_NOT_USABLE.number();
    if (onset.isPresent() && !wasFirm) {
      faults.add(
          ReportPart.ONSET,
          "First firm after "
              + onset.get()
              + ", and \""
              + grade.words()
              + "\": both cannot be. Choose how firm it was, or empty this field.");
    }
    if (usable.filter(NO_TIME::isLessThan).isPresent() && !grade.isUseful()) {
      faults.add(
          ReportPart.USABLE,
          "Usable for "
              + usable.get()
              + ", and \""
              + grade.words()
              + "\": both cannot be. Choose how firm it was, or empty this field.");
    }
  }

  /** It was not soft while it was usable. */
  private void notLongerThanItLasted(
      SoftAfter soft, Optional<TimeSpan> onset, Optional<TimeSpan> usable) {
    TimeSpan firmUntil =
        new TimeSpan(onset.orElse(NO_TIME).milliseconds() + usable.orElse(NO_TIME).milliseconds());
    boolean contradicts =
        switch (soft) {
          case SoftAfter.Exactly exactly -> firmUntil.isMoreThan(exactly.duration());
          case SoftAfter.Between between -> firmUntil.isMoreThan(between.before());
          case SoftAfter.AtLeast atLeast -> false;
          case SoftAfter.NotKnown notKnown ->
              firmUntil.isMoreThan(DurationLimits.NO_HIGHER_DOSE.value());
        };
    if (contradicts) {
      faults.add(
          usable.isPresent() ? ReportPart.USABLE : ReportPart.ONSET,
          "By this he was firm "
              + firmUntil
              + " after the injection, and the end says: "
              + soft.words()
              + ". Both cannot be: choose the end that is right, or empty this field.");
    }
  }

  /** Asked where the labels of his vials differ: the label decides what was injected. */
  private Optional<EntryId> vial(CourseFile file) {
    String entry = draft.text(ReportPart.VIAL);
    List<String> labels = VialLabels.of(file.vials());
    if (entry.isBlank() && labels.size() > 1) {
      faults.add(
          ReportPart.VIAL,
          "Say from which vial it was drawn, or that it is not known: the labels of his vials"
              + " differ: "
              + String.join("; ", labels)
              + ".");
    }
    if (entry.isBlank() || entry.equals(ReportPart.VIAL_NOT_KNOWN)) {
      return Optional.empty();
    }
    Optional<EntryId> vial =
        file.vials().stream()
            .map(written -> written.entry().id())
            .filter(id -> id.text().equals(entry))
            .findFirst();
    if (vial.isEmpty()) {
      faults.add(ReportPart.VIAL, "That vial is not on record for him: choose one of the list.");
    }
    return vial;
  }

  private Answer answer(ReportPart part) {
    return Arrays.stream(Answer.values())
        .filter(one -> one.words().equals(draft.text(part)))
        .findFirst()
        .orElse(Answer.NOT_KNOWN);
  }
}
