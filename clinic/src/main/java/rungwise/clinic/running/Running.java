package rungwise.clinic.running;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.OutsideText;
import rungwise.clinic.beside.JoinLog;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.course.CourseFact.LifeWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.life.LifeWord;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.LifeLog;
import rungwise.clinic.standing.StandingPorts;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * Whether a course runs: anybody who treats him may pause it, and only a prescriber lets it go on,
 * ends it or opens it again. None of it touches an emergency or a closed volume.
 */
public final class Running {

  private static final int LONGEST_NAME = 200;

  private static final String NOT_PAUSED = "His treatment is not paused: nothing was changed.";
  private static final String ENDED_ALREADY =
      "His treatment has ended already: nothing was changed.";
  private static final String NOT_ENDED = "His treatment has not ended: nothing was changed.";

  private static final String TREATED_ELSEWHERE =
      "His treatment goes on in the course with which this one is joined: nothing was changed.";

  private final StandingPorts ports;
  private final CourseChanges changes;

  public Running(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
  }

  /**
   * Nothing is injected from now on, until a prescriber resumes it. What is paused already may be
   * paused for another reason too: whoever resumes it has read both.
   */
  public Reading<Long> pause(Account actor, CourseId id, String reason) {
    return changes.change(actor, By.CLINICIAN, id, work(actor, new LifeWord.Paused(), reason));
  }

  /**
   * What is signed counts again.
   *
   * @param basis the number of the last entry that was shown
   */
  public Reading<Long> resume(Account actor, CourseId id, long basis, String reason) {
    return changes.changeSeen(actor, id, basis, work(actor, new LifeWord.Resumed(), reason));
  }

  /**
   * What had ended is open again; a dose needs a new signature.
   *
   * @param basis the number of the last entry that was shown
   */
  public Reading<Long> reopen(Account actor, CourseId id, long basis, String reason) {
    return changes.changeSeen(actor, id, basis, work(actor, new LifeWord.Reopened(), reason));
  }

  /** The treatment ends, and the signed dose with it. */
  public Reading<Long> end(Account actor, CourseId id, EndDraft draft) {
    var faults = new ArrayList<Fault>();
    Optional<LifeWord> end = read(draft, faults);
    if (draft.reason().isBlank()) {
      faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
    }
    if (!By.PRESCRIBER.includes(actor)) {
      return Reading.refused(By.PRESCRIBER.refusal());
    }
    return faults.isEmpty()
        ? changes.change(actor, By.PRESCRIBER, id, work(actor, end.orElseThrow(), draft.reason()))
        : new Reading.Refused<>(faults);
  }

  private BiFunction<CourseFile, Instant, Reading<Long>> work(
      Account actor, LifeWord word, String reason) {
    return (file, now) ->
        refusal(LifeLog.of(file), word)
            .or(() -> elsewhere(file, word))
            .<Reading<Long>>map(Reading::refused)
            .orElseGet(() -> append(actor, file.id(), word, reason, now));
  }

  private Reading<Long> append(
      Account actor, CourseId id, LifeWord word, String reason, Instant now) {
    return changes.appendWithReason(
        id, new LifeWritten(word), actor, now, Optional.empty(), reason);
  }

  private static Optional<String> elsewhere(CourseFile file, LifeWord word) {
    return word instanceof LifeWord.Reopened && JoinLog.of(file).follows()
        ? Optional.of(TREATED_ELSEWHERE)
        : Optional.empty();
  }

  private static Optional<String> refusal(LifeLog log, LifeWord word) {
    return switch (word) {
      case LifeWord.Paused paused -> log.isEnded() ? Optional.of(ENDED_ALREADY) : Optional.empty();
      case LifeWord.Resumed resumed -> log.isPaused() ? Optional.empty() : Optional.of(NOT_PAUSED);
      case LifeWord.Ended ended -> log.isEnded() ? Optional.of(ENDED_ALREADY) : Optional.empty();
      case LifeWord.Reopened reopened -> log.isEnded() ? Optional.empty() : Optional.of(NOT_ENDED);
    };
  }

  private Optional<LifeWord> read(EndDraft draft, List<Fault> faults) {
    Optional<EndReason> why = named(EndReason.values(), draft.why());
    Optional<VialsLeft> vials = named(VialsLeft.values(), draft.vials());
    Optional<AfterEnd> after = named(AfterEnd.values(), draft.after());
    missing(why, EndDraft.WHY, "Choose why his treatment ends.").ifPresent(faults::add);
    Optional<LocalDate> last = lastDose(draft, faults);
    missing(vials, EndDraft.VIALS, "Choose what became of his vials. Not known is an answer.")
        .ifPresent(faults::add);
    missing(after, EndDraft.AFTER, "Choose what treats him now. Not decided yet is an answer.")
        .ifPresent(faults::add);
    if (after.filter(AfterEnd::isReferral).isPresent() && draft.referredTo().isBlank()) {
      faults.add(new Fault(EndDraft.REFERRED_TO, "Write to whom he is referred."));
    }
    Reading<String> referred =
        draft.referredTo().isBlank()
            ? Reading.of("")
            : OutsideText.line("To whom he is referred", draft.referredTo(), LONGEST_NAME)
                .at(EndDraft.REFERRED_TO);
    faults.addAll(referred.placed());
    CourseChanges.textFault(draft.reason(), CourseChanges.REASON).ifPresent(faults::add);
    return faults.isEmpty()
        ? Optional.of(
            new LifeWord.Ended(
                why.orElseThrow(),
                last,
                vials.orElseThrow(),
                after.orElseThrow(),
                referred.orThrow()))
        : Optional.empty();
  }

  private Optional<LocalDate> lastDose(EndDraft draft, List<Fault> faults) {
    if (draft.lastDose().isBlank()) {
      return Optional.empty();
    }
    Reading<LocalDate> day = ClinicTime.readDate(draft.lastDose()).at(EndDraft.LAST_DOSE);
    faults.addAll(day.placed());
    if (day.found().filter(one -> one.isAfter(ports.today())).isPresent()) {
      faults.add(
          new Fault(
              EndDraft.LAST_DOSE,
              ClinicTime.words(day.orThrow())
                  + " is still to come: write the day of his last injection, or leave it empty."));
    }
    return day.found();
  }

  private static Optional<Fault> missing(Optional<?> answer, String field, String text) {
    return answer.isPresent() ? Optional.empty() : Optional.of(new Fault(field, text));
  }

  private static <E extends Enum<E>> Optional<E> named(E[] all, String name) {
    return Arrays.stream(all).filter(one -> one.name().equals(name)).findFirst();
  }
}
