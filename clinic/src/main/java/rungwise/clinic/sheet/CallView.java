package rungwise.clinic.sheet;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.reaching.ReachView;
import rungwise.dosing.known.Dose;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.Elapsed;

/**
 * A call of a known man in words.
 *
 * @param reach how he is called now
 * @param warnings what a hospital must know first, the gravest first; "not known" among it
 * @param allergy whether he is allergic to a component of what is injected
 * @param dose the last injection on record, or the signed dose where there is none
 * @param doseIs which of the two it is, and when
 * @param plan the lines of his emergency plan
 * @param number whom to call at night, as his plan says
 * @param isOpen whether a call is open
 * @param isToReview whether a call that is closed waits for a prescriber
 * @param began when it began, by the earliest statement; empty if none says, or nobody knows
 * @param elapsed how long it has lasted; empty while nobody has said anything
 * @param log everything that was written in a call that is open or was closed within a day
 * @param struckable the starts that count, by their entries
 */
public record CallView(
    CourseId course,
    CourseView.Man man,
    ReachView reach,
    List<Warning> warnings,
    Answer allergy,
    Optional<Dose> dose,
    String doseIs,
    List<String> plan,
    Optional<String> number,
    boolean isOpen,
    boolean isToReview,
    Optional<Instant> began,
    Optional<Elapsed> elapsed,
    List<Line> log,
    List<Said> struckable) {

  /**
   * One warning.
   *
   * @param isKnown whether he has it; else nobody has asked, which counts as yes
   */
  public record Warning(boolean isKnown, String words) {}

  /** One line of the log: what was written, when and by whom. */
  public record Line(String words, String written) {}

  /** A start that was said, with the entry that says so. */
  public record Said(String entry, String words) {}

  public CallView {
    warnings = List.copyOf(warnings);
    plan = List.copyOf(plan);
    log = List.copyOf(log);
    struckable = List.copyOf(struckable);
  }

  /** The steps that are due now. */
  public List<CallStep> steps() {
    return CallStep.due(elapsed.orElseGet(() -> new Elapsed.Unknown(Optional.empty())));
  }
}
