package rungwise.clinic.titration;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.dosing.guard.GuardClass;
import rungwise.dosing.known.Dose;

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
 * @param mayInject the answer to "may he inject now?"
 * @param blocks what stops him, if anything
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
    String mayInject,
    List<VerdictText> blocks,
    List<StepLine> steps,
    List<InjectionLine> injections,
    List<ReadyLine> ready,
    List<EntryLine> entries,
    boolean hasOpenEmergency,
    Optional<Dose> closedFrom) {

  /** Who he is. */
  public record Man(String fullName, String birthDate, String recordNumber, String group) {}

  /** With what his course runs. */
  public record Running(
      String preparation, String barrel, String protocol, boolean isSample, String screening) {}

  /**
   * A rule that spoke.
   *
   * @param facts what it read
   */
  public record ReasonLine(String sentence, List<String> facts, String source) {
    public ReasonLine {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A safety check that spoke.
   *
   * @param rule its name in the table of guards
   * @param next when it clears, or what would clear it; may be empty
   */
  public record VerdictText(
      String rule,
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
   */
  public record SignedLine(
      Dose dose, String place, String by, String at, boolean isSuspended, String changed) {}

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

  /** One injection. */
  public record InjectionLine(
      String entry,
      String at,
      String drawn,
      String firmness,
      String soft,
      String causes,
      boolean isWorrying) {}

  /** Something that home use needs. */
  public record ReadyLine(String token, String words, boolean isOnRecord) {}

  /** One line of the record. */
  public record EntryLine(long number, String at, String by, String what, String reason) {}

  public CourseView {
    reasons = List.copyOf(reasons);
    verdicts = List.copyOf(verdicts);
    notes = List.copyOf(notes);
    blocks = List.copyOf(blocks);
    steps = List.copyOf(steps);
    injections = List.copyOf(injections);
    ready = List.copyOf(ready);
    entries = List.copyOf(entries);
  }

  /** Whether he may inject now. */
  public boolean isClear() {
    return blocks.isEmpty();
  }
}
