package rungwise.clinic.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.day.Examination;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.NonResponseStep;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Injection;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening;
import rungwise.quantities.TimeSpan;

/** What stands around the doses of a course, in words. */
final class AroundWords {

  private static final int USUAL_OF_LAST = 5;

  private final ClinicTime time;
  private final VerdictWords texts;

  AroundWords(ClinicTime time, VerdictWords texts) {
    this.time = time;
    this.texts = texts;
  }

  CourseView.Around of(CourseState state, Advice advice) {
    CourseFile file = state.file();
    Examination examination = Examination.of(state, time);
    boolean isAtMaximum = advice.reason().rule() == TitrationRule.AT_MAXIMUM;
    return new CourseView.Around(
        screening(state),
        state.question().screening().open(state.question().preparation()).size(),
        file.baseline().map(EntryWords::words).orElse(""),
        file.vial().map(written -> EntryWords.words(written.fact().vial())).orElse(""),
        file.emergencyPlan().map(EmergencyPlan::words).orElse(""),
        usual(state),
        file.observing().stream()
            .findFirst()
            .map(written -> time.words(written.fact().injectedAt())),
        examination.isAfterEmergency()
            ? "due now, after the emergency"
            : "due " + ClinicTime.words(examination.due()),
        examination.isDue(time.dayOf(state.now())),
        texts.of(
            advice.courseVerdicts().stream()
                .filter(verdict -> verdict.rule() == GuardRule.CAUTION)
                .toList()),
        state.question().screening().undecided(state.question().preparation()),
        isAtMaximum ? List.of(NonResponseStep.values()) : List.of());
  }

  private String screening(CourseState state) {
    Screening screening = state.question().screening();
    Preparation preparation = state.question().preparation();
    Optional<Instant> oldest = screening.oldest(preparation);
    if (oldest.isEmpty()) {
      return "not asked yet";
    }
    List<Condition> open = screening.open(preparation);
    String yes =
        screening.answers().entrySet().stream()
            .filter(one -> one.getValue().answer() == Answer.YES)
            .map(one -> one.getKey().words())
            .collect(Collectors.joining("; "));
    return (yes.isEmpty() ? "no condition" : yes)
        + (open.isEmpty() ? "" : "; " + open.size() + " questions open")
        + "; cardiac class "
        + screening.cardiacRisk().map(risk -> risk.words()).orElse("not known")
        + "; oldest answer of "
        + ClinicTime.words(LocalDate.ofInstant(oldest.get(), time.zone()));
  }

  /** How it usually goes: the middle one of the last useful injections that said so. */
  private static String usual(CourseState state) {
    Optional<TimeSpan> onset = middle(state, InjectionDetails::onset);
    Optional<TimeSpan> usable = middle(state, InjectionDetails::usable);
    return onset.map(one -> "first firm after " + one).orElse("")
        + (onset.isPresent() && usable.isPresent() ? ", " : "")
        + usable.map(one -> "usable for " + one).orElse("");
  }

  private static Optional<TimeSpan> middle(
      CourseState state, Function<InjectionDetails, Optional<TimeSpan>> part) {
    Set<Long> ofThis =
        state.question().history().of(state.question().preparation()).stream()
            .map(Injection::entry)
            .collect(Collectors.toSet());
    List<TimeSpan> all =
        state.file().reports().stream()
            .filter(written -> ofThis.contains(written.entry().number()))
            .map(CourseFile.Written::fact)
            .filter(report -> report.grade().isUseful())
            .flatMap(report -> part.apply(report.details()).stream())
            .toList();
    List<TimeSpan> last =
        all.subList(Math.max(0, all.size() - USUAL_OF_LAST), all.size()).stream().sorted().toList();
    return last.isEmpty() ? Optional.empty() : Optional.of(last.get((last.size() - 1) / 2));
  }
}
