package rungwise.clinic.screening;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.VerdictText;
import rungwise.clinic.standing.CourseState;

/**
 * The screening of a man in words, for the preparation of his plan.
 *
 * @param basis the number of the last entry that it shows
 * @param answer what the screening says, in one line
 * @param verdicts what the safety checks say of it, the gravest first
 * @param kept each yes that counts until a prescriber writes that it was wrong
 * @param undecided conditions on which a prescriber has to decide
 * @param decided decisions on record that still hold
 * @param baseline where he stands before treatment, if that is on record
 */
public record ScreeningView(
    long basis,
    String answer,
    List<VerdictText> verdicts,
    Cardiac cardiac,
    List<Group> groups,
    List<KeptYes> kept,
    List<Question> undecided,
    List<Decided> decided,
    Optional<BaselineLine> baseline,
    ExaminationLine examination) {

  /**
   * How risky sexual activity is for his heart.
   *
   * @param words the class, or why it is not known
   * @param action what it asks for; empty while it is not known
   * @param because the conditions of his heart, in a line; may be empty
   */
  public record Cardiac(String words, String action, String because, String source) {}

  /**
   * The questions of a topic.
   *
   * @param token its name
   * @param hasUnasked whether a question has no answer on record
   */
  public record Group(String token, String words, List<Question> questions, boolean hasUnasked) {
    public Group {
      questions = List.copyOf(questions);
    }

    /** Those that are to be asked, or asked again. */
    public List<Question> open() {
      return questions.stream().filter(question -> !question.isSettled()).toList();
    }

    /** Those that were answered, and not too long ago. */
    public List<Question> settled() {
      return questions.stream().filter(Question::isSettled).toList();
    }
  }

  /**
   * A question with its last answer.
   *
   * @param name the name of the condition
   * @param meaning what a yes means for this preparation, in a word
   * @param answer "yes", "no" or "not known"; empty if nobody has asked
   * @param day when the answer was given, or last said to be still true; empty if nobody has asked
   * @param action what to do after a yes, or why it is asked
   * @param clinicRule what the clinic's own protocol says of it; may be empty
   * @param counts what counts where that is not the last answer; may be empty
   * @param isSettled whether it was answered, and the answer is not too old
   */
  public record Question(
      String name,
      String words,
      String meaning,
      String answer,
      String day,
      String action,
      String clinicRule,
      String counts,
      String source,
      boolean isSettled) {

    /** "no, 2 March 2026", or that nobody has asked. */
    public String last() {
      return answer.isEmpty() ? "not asked yet" : answer + ", " + day;
    }
  }

  /**
   * A yes that counts.
   *
   * @param said when and by whom it was written down
   * @param denied what was answered later, and by whom; empty if nothing else was
   */
  public record KeptYes(Question question, String said, String denied) {}

  /** A prescriber's decision to go on with a condition. */
  public record Decided(String condition, String by, String at, String reason) {}

  /**
   * What the baseline says.
   *
   * @param help what is needed where he himself cannot do it; may be empty
   */
  public record BaselineLine(Baseline baseline, String words, String help) {}

  /**
   * The examination for curvature and scarring.
   *
   * @param last the last one in a line; empty if there was none
   */
  public record ExaminationLine(String last, String due, boolean isDue) {}

  public ScreeningView {
    verdicts = List.copyOf(verdicts);
    groups = List.copyOf(groups);
    kept = List.copyOf(kept);
    undecided = List.copyOf(undecided);
    decided = List.copyOf(decided);
  }

  /** The screening of a course at its instant. */
  public static ScreeningView of(CourseState state, CourseView course, ClinicTime time) {
    return new ScreeningWords(state, course, time).view();
  }

  /** Which questions are open or too old, a line for each topic; empty if none is. */
  public List<String> stillOpen() {
    return groups.stream()
        .filter(group -> !group.open().isEmpty())
        .map(
            group ->
                group.words()
                    + ": "
                    + (group.settled().isEmpty()
                        ? "all " + group.open().size()
                        : group.open().stream()
                            .map(Question::words)
                            .collect(Collectors.joining("; "))))
        .toList();
  }

  /** Whether a question has no answer on record. */
  public boolean hasUnasked() {
    return groups.stream().anyMatch(Group::hasUnasked);
  }
}
