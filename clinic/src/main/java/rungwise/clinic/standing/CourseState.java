package rungwise.clinic.standing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.past.PastHistories.Undone;
import rungwise.clinic.past.PastReading;
import rungwise.dosing.Dosing;
import rungwise.dosing.choice.Choice;
import rungwise.dosing.decision.Advice;
import rungwise.dosing.decision.Clearance;
import rungwise.dosing.guard.SignedDose;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Question;

/** A course at an instant: its record and what the engine says of it. */
public final class CourseState {

  private final CourseFile file;
  private final Answers answers;
  private final Question question;
  private final Choice choice;
  private final List<String> notes;
  private final List<Undone> undone;
  private final List<ReportFlag> flags;
  private final List<String> protocolWaits;
  private final ClockBelief clock;

  /** Once somebody has asked for it: the same question always has the same answer. */
  private @Nullable Advice advice;

  CourseState(
      CourseFile file,
      Answers answers,
      Question question,
      Choice choice,
      List<String> notes,
      List<Undone> undone,
      List<ReportFlag> flags,
      List<String> protocolWaits,
      ClockBelief clock) {
    this.file = file;
    this.answers = answers;
    this.question = question;
    this.choice = choice;
    this.notes = List.copyOf(notes);
    this.undone = List.copyOf(undone);
    this.flags = List.copyOf(flags);
    this.protocolWaits = List.copyOf(protocolWaits);
    this.clock = clock;
  }

  public CourseFile file() {
    return file;
  }

  /** What he answered, with every yes of his other courses. */
  public Answers answers() {
    return answers;
  }

  public Question question() {
    return question;
  }

  /** How the next dose is chosen. */
  public Choice choice() {
    return choice;
  }

  /** What a reader must know about the ladder while it is not signed. */
  public List<String> notes() {
    return notes;
  }

  /** Histories that were taken back, and that no prescriber has confirmed to be wrong. */
  public List<Undone> undone() {
    return undone;
  }

  /** What a prescriber is to look at among the reports, seen or not. */
  public List<ReportFlag> flags() {
    return flags;
  }

  /** Why the protocol has to be signed anew; empty if it need not. */
  public List<String> protocolWaits() {
    return protocolWaits;
  }

  /** What is believed of the clock that says what time it is. */
  public ClockBelief clock() {
    return clock;
  }

  public Advice advice() {
    Advice known = advice;
    if (known == null) {
      known = Dosing.advise(question, choice);
      advice = known;
    }
    return known;
  }

  /** The answer to "may he inject now?". */
  public Clearance mayInject() {
    return clearAtBothEnds(asked -> Dosing.mayInject(asked, signed()));
  }

  /** Nothing is clear that is not clear as far from now as the clock may be from the truth. */
  private Clearance clearAtBothEnds(Function<Question, Clearance> answer) {
    Clearance now = answer.apply(question);
    if (clock.slack().isZero() || !now.isClear()) {
      return now;
    }
    return Stream.of(now().minus(clock.slack()), now().plus(clock.slack()))
        .map(at -> answer.apply(question.at(at)))
        .filter(edge -> !edge.isClear())
        .findFirst()
        .orElse(now);
  }

  /** Now; empty while it is wrong. */
  public Optional<Instant> knownNow() {
    return clock instanceof ClockBelief.Wrong ? Optional.empty() : Optional.of(now());
  }

  /** The instants at which the answers above may change while nothing is written. */
  public List<Instant> turns() {
    return Dosing.turns(question, signed());
  }

  /** What no prescriber has seen yet. */
  public List<ReportFlag> flagsToSee() {
    return flags.stream().filter(flag -> !flag.isSeen()).toList();
  }

  /** Those of them that still stop or close something. */
  public List<Undone> undoneToConfirm() {
    History history = question.history();
    boolean isOfNobodyKnowsWhat =
        !history.before().unmapped().isEmpty() || !history.before().nobodyKnows().isEmpty();
    return undone.stream()
        .filter(
            one ->
                (isOfNobodyKnowsWhat && PastReading.hasLongUndated(one.kept()))
                    || PastReading.isOpen(file, one.kept())
                    || history.struck().stream()
                        .anyMatch(said -> said.now() == one.number() && said.isToConfirm()))
        .toList();
  }

  public Instant now() {
    return question.now();
  }

  private Optional<SignedDose> signed() {
    return file.signedDose().map(CourseState::signedDose);
  }

  private static SignedDose signedDose(Written<DoseSigned> written) {
    DoseSigned signed = written.fact();
    return new SignedDose(
        signed.volume(),
        signed.place(),
        signed.overridden(),
        signed.nextStep(),
        written.entry().number());
  }

  /** Whether the signed next step may be taken now; empty if none was switched on. */
  public Optional<Clearance> mayTakeNextStep() {
    return signed()
        .filter(dose -> dose.nextStep().isPresent())
        .map(dose -> clearAtBothEnds(asked -> Dosing.mayTakeNextStep(asked, dose)));
  }
}
