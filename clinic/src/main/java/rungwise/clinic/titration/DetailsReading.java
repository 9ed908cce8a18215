package rungwise.clinic.titration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.dosing.history.Spot;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/** Reads what a report may say besides; nothing of it is asked for. */
final class DetailsReading {

  private static final int LONGEST_TABLETS = 200;

  private final List<String> faults;
  private final List<String> notices;

  DetailsReading(List<String> faults, List<String> notices) {
    this.faults = faults;
    this.notices = notices;
  }

  InjectionDetails read(ReportDraft.Details draft, CourseFile file) {
    Optional<TimeSpan> onset = minutes("Onset", draft.onsetMinutes());
    Optional<TimeSpan> usable = minutes("Usable for", draft.usableMinutes());
    Optional<Spot> spot =
        take(FormChoices.spot(draft.side(), draft.hour())).orElse(Optional.empty());
    Optional<Integer> pain = take(FormChoices.pain(draft.pain())).orElse(Optional.empty());
    Optional<EntryId> vial = vial(draft.vial(), file);
    String tablets = draft.otherTablets().strip();
    if (tablets.length() > LONGEST_TABLETS) {
      faults.add("Other tablets: write at most " + LONGEST_TABLETS + " characters.");
    }
    Answer second = answer(draft.secondDose());
    if (second == Answer.YES) {
      notices.add("He injected a second time that day: enter that injection as a report too.");
    }
    return faults.isEmpty()
        ? new InjectionDetails(
            onset,
            usable,
            spot,
            pain,
            answer(draft.bruise()),
            answer(draft.aroused()),
            FormChoices.wrong(draft.causes()),
            vial,
            tablets,
            second)
        : InjectionDetails.NONE;
  }

  private Optional<TimeSpan> minutes(String what, String text) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    Reading<TimeSpan> reading = TimeSpan.parseMinutesFromZero(text);
    reading.faults().stream().map(fault -> what + ": " + fault).forEach(faults::add);
    return reading.found();
  }

  private <T> Optional<T> take(Reading<T> reading) {
    faults.addAll(reading.faults());
    notices.addAll(reading.notices());
    return reading.found();
  }

  private Optional<EntryId> vial(String entry, CourseFile file) {
    if (entry.isBlank()) {
      return Optional.empty();
    }
    Optional<EntryId> vial =
        file.vials().stream()
            .map(written -> written.entry().id())
            .filter(id -> id.text().equals(entry))
            .findFirst();
    if (vial.isEmpty()) {
      faults.add("That vial is not on record for him: choose one of the list.");
    }
    return vial;
  }

  private static Answer answer(String text) {
    return Arrays.stream(Answer.values())
        .filter(one -> one.words().equals(text))
        .findFirst()
        .orElse(Answer.NOT_KNOWN);
  }
}
