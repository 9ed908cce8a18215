package rungwise.clinic.screening;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.DecisionWritten;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.screening.ScreeningView.BaselineLine;
import rungwise.clinic.screening.ScreeningView.Cardiac;
import rungwise.clinic.screening.ScreeningView.Decided;
import rungwise.clinic.screening.ScreeningView.ExaminationLine;
import rungwise.clinic.screening.ScreeningView.Group;
import rungwise.clinic.screening.ScreeningView.KeptYes;
import rungwise.clinic.screening.ScreeningView.Question;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.CardiacRisk;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Finding;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.screening.Topic;

/** Puts the screening of a course into words. */
final class ScreeningWords {

  private static final String NO_HELP = "";
  private static final String NEEDS_HELP =
      "He himself is to inject, but his hands or his sight are not enough: teach his partner, or"
          + " use a device.";

  private final CourseState state;
  private final CourseView course;
  private final ClinicTime time;
  private final Screening screening;
  private final Answers answers;
  private final Preparation preparation;

  ScreeningWords(CourseState state, CourseView course, ClinicTime time) {
    this.state = state;
    this.course = course;
    this.time = time;
    this.screening = state.question().screening();
    this.answers = state.answers();
    this.preparation = state.question().preparation();
  }

  ScreeningView view() {
    var found = new ScreeningFindings(state.question(), this::day);
    return new ScreeningView(
        state.file().basis(),
        found.answer(),
        found.verdicts(),
        cardiac(),
        Arrays.stream(Topic.values()).map(this::group).toList(),
        kept(),
        screening.undecided(preparation).stream().map(this::question).toList(),
        decided(),
        state.file().baseline().map(this::baseline),
        examination());
  }

  private String day(Instant instant) {
    return ClinicTime.words(LocalDate.ofInstant(instant, time.zone()));
  }

  private Cardiac cardiac() {
    Optional<CardiacRisk> risk = screening.cardiacRisk();
    String because =
        screening.heart().stream()
            .map(one -> one.words() + " (" + one.risk().orElseThrow().words() + ")")
            .collect(Collectors.joining("; "));
    return new Cardiac(
        risk.map(one -> "Cardiac class " + one.words())
            .orElse("Cardiac class not known while a question about his heart is open"),
        risk.map(one -> sentence(one.action())).orElse(""),
        because,
        CardiacRisk.SOURCE.words());
  }

  private Group group(Topic topic) {
    List<Question> questions =
        Arrays.stream(Condition.values())
            .filter(condition -> condition.topic() == topic)
            .map(this::question)
            .toList();
    boolean hasUnasked =
        questions.stream().anyMatch(one -> one.answer().isEmpty() && one.counts().isEmpty());
    return new Group(topic.name(), topic.words(), questions, hasUnasked);
  }

  private Question question(Condition condition) {
    Optional<Screening.Answered> last = Optional.ofNullable(answers.last().get(condition));
    return new Question(
        condition.name(),
        condition.words(),
        meaning(condition.findingFor(preparation)),
        last.map(Screening.Answered::answer).map(Answer::words).orElse(""),
        last.map(Screening.Answered::at).map(this::day).orElse(""),
        condition.action(),
        clinicRule(condition, state.question().protocol()),
        counts(condition),
        condition.source().words(),
        isSettled(condition, last));
  }

  /** What must be known and is not, what nobody asked, and what is too old, is not settled. */
  private boolean isSettled(Condition condition, Optional<Screening.Answered> last) {
    boolean isOpen = screening.open(preparation).contains(condition);
    boolean isOld =
        condition.findingFor(preparation) != Finding.NOTHING
            && last.filter(one -> CourseGuards.isOld(state.question(), one.at())).isPresent();
    return !isOpen && !isOld && (last.isPresent() || !counts(condition).isEmpty());
  }

  /** Why a condition counts as present although the last answer does not say so. */
  private String counts(Condition condition) {
    if (condition == Condition.CURVATURE_OR_SCARRING && answers.found().isPresent()) {
      return "Counts as yes: found at the examination of "
          + ClinicTime.words(answers.found().get().fact().day())
          + ". Only a later examination without it lifts that.";
    }
    return answers.kept(condition).flatMap(Answers.Kept::denied).isPresent()
        ? "Counts as yes until a prescriber writes that the yes was wrong."
        : "";
  }

  private List<KeptYes> kept() {
    return Arrays.stream(Condition.values())
        .flatMap(condition -> answers.kept(condition).stream().map(one -> kept(condition, one)))
        .toList();
  }

  private KeptYes kept(Condition condition, Answers.Kept yes) {
    return new KeptYes(
        question(condition),
        "Yes: " + written(yes.said()),
        yes.denied()
            .map(
                entry ->
                    "Later answered "
                        + answerIn(entry, condition)
                        + ": "
                        + written(entry)
                        + " It is kept and changes nothing.")
            .orElse(""));
  }

  private static String answerIn(CourseEntry entry, Condition condition) {
    return entry.fact() instanceof Screened screened
        ? new Screening(screened.answers(), Set.of()).answerTo(condition).words()
        : "";
  }

  private String written(CourseEntry entry) {
    CourseView.EntryLine line = course.entry(entry.number());
    return line.at() + ", " + line.by() + ".";
  }

  private static String meaning(Finding finding) {
    return switch (finding) {
      case NOTHING -> "nothing with this preparation";
      case CAUTION -> "caution";
      case DECISION -> "prescriber decides";
      case CONTRAINDICATION -> "contraindication";
    };
  }

  static String clinicRule(Condition condition, Protocol protocol) {
    return condition == Condition.PDE5_INHIBITOR
        ? "The clinic's own hours between the two: "
            + protocol.limits().pde5Hours().value()
            + " h; no published figure."
        : "";
  }

  private List<Decided> decided() {
    return state.file().inForce(DecisionWritten.class).stream()
        .filter(written -> screening.decided().contains(written.fact().condition()))
        .map(this::decided)
        .toList();
  }

  private Decided decided(Written<DecisionWritten> written) {
    CourseView.EntryLine entry = course.entry(written.entry().number());
    return new Decided(written.fact().condition().words(), entry.by(), entry.at(), entry.reason());
  }

  private BaselineLine baseline(Baseline baseline) {
    return new BaselineLine(
        baseline,
        sentence(course.around().baseline()),
        baseline.needsHelp() ? NEEDS_HELP : NO_HELP);
  }

  private ExaminationLine examination() {
    return new ExaminationLine(
        state.file().examined().map(this::examined).orElse(""),
        "The next one is " + course.around().examination() + ".",
        course.around().isExaminationDue());
  }

  private String examined(Written<ExaminationRecorded> written) {
    CourseView.EntryLine entry = course.entry(written.entry().number());
    return written
            .fact()
            .at()
            .map(time::words)
            .orElseGet(() -> ClinicTime.words(written.fact().day()))
        + ", curvature or scarring: "
        + written.fact().scarring().words()
        + ". "
        + (entry.reason().isEmpty() ? "" : entry.reason() + ". ")
        + entry.by()
        + ".";
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }
}
