package rungwise.clinic.sheet;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Plan;
import rungwise.clinic.day.DayLine;
import rungwise.clinic.day.Urgency;
import rungwise.clinic.reaching.ReachView;
import rungwise.dosing.decision.NonResponseStep;
import rungwise.dosing.decision.TitrationRule;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.Dose;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Volume;

/**
 * A course as a clinician sees it, on a page or in a document. Every number in it was taken from
 * the advice or the record; nothing is worked out here.
 *
 * @param basis the number of the last entry it shows
 * @param decision what is proposed, in a word
 * @param proposed the proposed dose, if any
 * @param because the deciding reason in one line
 * @param reasons every rule that spoke, the deciding one first
 * @param verdicts what the safety checks say of the proposal, or of every dose where none is open
 * @param notBefore from when an injection is possible again, if that is later
 * @param notes what to know about a schedule that nobody has signed yet
 * @param signed the dose in force
 * @param day what the course needs from somebody, and since when
 * @param open the erection of which nobody has said how it ended
 * @param reach how he is called now
 * @param now the answer to "may he inject now?"
 * @param blocks what stops him, if anything
 * @param homeBlocks what forbids signing a dose for home
 * @param lifting what waits for a prescriber
 * @param overridable the holds that a signature may override now, each once
 */
public record CourseView(
    CourseId id,
    long basis,
    Man man,
    Running running,
    String decision,
    Optional<Dose> proposed,
    String because,
    List<ReasonLine> reasons,
    List<VerdictText> verdicts,
    Optional<String> notBefore,
    List<String> notes,
    Optional<SignedLine> signed,
    DayLine day,
    Optional<OpenErectionView> open,
    ReachView reach,
    NowView now,
    List<VerdictText> blocks,
    List<VerdictText> homeBlocks,
    List<VerdictText> overridable,
    List<StepLine> steps,
    Volume ceiling,
    List<InjectionLine> injections,
    List<ReadyLine> ready,
    List<EntryLine> entries,
    Optional<Dose> closedFrom,
    Around around,
    LiftingView lifting) {

  /**
   * Who he is.
   *
   * @param flaws what of his record is not as it was written, in words; empty if nothing
   */
  public record Man(
      String fullName,
      String birthDate,
      int age,
      String recordNumber,
      String group,
      List<String> flaws) {
    public Man {
      flaws = List.copyOf(flaws);
    }
  }

  /**
   * With what his course runs.
   *
   * @param waits why the protocol has to be signed anew; empty if it need not
   * @param plan the ids of the same, for a form that chooses another plan
   */
  public record Running(
      String preparation,
      String barrel,
      String protocol,
      boolean isSample,
      List<String> waits,
      Plan plan) {
    public Running {
      waits = List.copyOf(waits);
    }
  }

  /**
   * What stands around the doses.
   *
   * @param screening what was answered, in a line
   * @param openQuestions how many questions of the screening have no answer that counts
   * @param baseline in a line; may be empty
   * @param vial the vial in use, in a line; may be empty
   * @param emergencyPlan in a line; may be empty
   * @param usual the usual onset and usable time, in a line; may be empty
   * @param observing since when he is under observation, if he is
   * @param examination when the next examination is due
   * @param isExaminationDue whether it is due by now
   * @param cautions what the screening says at every dose
   * @param undecided the conditions on which a prescriber has to decide
   * @param nonResponse what is gone through at the last step; empty unless it does not work there
   */
  public record Around(
      String screening,
      int openQuestions,
      String baseline,
      String vial,
      String emergencyPlan,
      String usual,
      Optional<String> observing,
      String examination,
      boolean isExaminationDue,
      List<VerdictText> cautions,
      List<Condition> undecided,
      List<NonResponseStep> nonResponse) {
    public Around {
      cautions = List.copyOf(cautions);
      undecided = List.copyOf(undecided);
      nonResponse = List.copyOf(nonResponse);
    }
  }

  /**
   * A rule that spoke.
   *
   * @param facts what it read
   */
  public record ReasonLine(TitrationRule rule, String sentence, List<String> facts, String source) {
    public ReasonLine {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A safety check that spoke.
   *
   * @param next when it clears, or what would clear it; may be empty
   */
  public record VerdictText(
      GuardRule rule,
      GuardClass guardClass,
      String sentence,
      String next,
      List<String> facts,
      String source) {
    public VerdictText {
      facts = List.copyOf(facts);
    }
  }

  /**
   * The dose in force.
   *
   * @param isSuspended whether a safety check forbids it by now
   * @param accepted how long an erection may last at this dose, in words, where over an hour was
   *     accepted; may be empty
   * @param nextStep the one step that may follow without a new signature
   * @param nextStepNow what the safety checks say of that step now; empty if it may be taken
   */
  public record SignedLine(
      Dose dose,
      Place place,
      String by,
      String at,
      boolean isSuspended,
      String changed,
      String accepted,
      Optional<Dose> nextStep,
      List<VerdictText> nextStepNow) {
    public SignedLine {
      nextStepNow = List.copyOf(nextStepNow);
    }
  }

  /**
   * One step of the schedule.
   *
   * @param state "in force", "proposed", "closed"... ; may be empty
   * @param isAllowed whether a prescriber may sign it now
   */
  public record StepLine(
      Dose dose, String state, boolean isProposed, boolean isAllowed, List<VerdictText> verdicts) {
    public StepLine {
      verdicts = List.copyOf(verdicts);
    }
  }

  /**
   * One injection.
   *
   * @param drawn the volume; with what it held, where that was another preparation or may have been
   * @param isOfThisPreparation whether it was the preparation of the plan in force
   * @param report the report itself, for a drawing
   * @param day the day in the clinic's zone
   */
  public record InjectionLine(
      String entry,
      String at,
      String drawn,
      String firmness,
      String soft,
      String causes,
      String details,
      boolean isWorrying,
      boolean isOfThisPreparation,
      LocalDate day,
      InjectionReported report) {}

  /** Something that home use needs. */
  public record ReadyLine(String token, String words, boolean isOnRecord) {}

  /** One line of the record. */
  public record EntryLine(long number, String at, String by, String what, String reason) {}

  public CourseView {
    reasons = List.copyOf(reasons);
    verdicts = List.copyOf(verdicts);
    notes = List.copyOf(notes);
    blocks = List.copyOf(blocks);
    homeBlocks = List.copyOf(homeBlocks);
    overridable = List.copyOf(overridable);
    steps = List.copyOf(steps);
    injections = List.copyOf(injections);
    ready = List.copyOf(ready);
    entries = List.copyOf(entries);
  }

  /**
   * The entry of a number.
   *
   * @throws java.util.NoSuchElementException if it is not in this course
   */
  public EntryLine entry(long number) {
    return entries.stream().filter(one -> one.number() == number).findFirst().orElseThrow();
  }

  /** The verdicts on the proposal that do not stop him already: a page says each once. */
  public List<VerdictText> verdictsBesideBlocks() {
    return verdicts.stream().filter(one -> !blocks.contains(one)).toList();
  }

  /** Whether something that may mean 4 hours stands on record without a complete report. */
  public boolean hasUnfinishedReport() {
    return blocks.stream().anyMatch(one -> one.rule() == GuardRule.REPORT_UNFINISHED);
  }

  /** Whether the block of the open erection sends him to the emergency department already. */
  public boolean isEmergencyNow() {
    return open.filter(one -> one.urgency() == Urgency.EMERGENCY_DEPARTMENT).isPresent();
  }

  /** Whether he may inject now. */
  public boolean isClear() {
    return now.sign().isYes();
  }
}
