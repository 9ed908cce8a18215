package rungwise.clinic.screening;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.beside.JoinedAnswers;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.course.Answers;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.CourseFact.AnswerOverturned;
import rungwise.clinic.course.CourseFact.BaselineRecorded;
import rungwise.clinic.course.CourseFact.DecisionWritten;
import rungwise.clinic.course.CourseFact.ExaminationRecorded;
import rungwise.clinic.course.CourseFact.Screened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use cases of the screening: answers, decisions, baseline and examinations. */
public final class Screenings {

  /** The field that says what shows that a yes was wrong. */
  public static final String SHOWN_BY = "shownBy";

  /** The fields of an examination. */
  public static final String DAY = "day";

  public static final String TIME = "examinedTime";

  public static final String SCARRING = "scarring";
  public static final String NOTE = "note";

  private static final String CHANGED_MEANWHILE =
      "The screening was changed since this page was opened: compare the dates, then save again.";

  private static final String NO_YES =
      "He gave no yes to that question that still counts, so nothing was changed. What an"
          + " examination found is lifted by a later examination without it.";

  private static final String ONLY_WHAT_STOPS =
      "It is not known what time it is, and a no counts until a date: nothing was saved. Save what"
          + " speaks against injecting by itself now, as a yes or as not known, and the rest when"
          + " the clock is right: the top of the page says what to do.";

  private final CourseChanges changes;
  private final ClinicTime time;
  private final Courses courses;

  public Screenings(StandingPorts ports) {
    this.changes = new CourseChanges(ports);
    this.time = ports.time();
    this.courses = ports.courses();
  }

  private Answers answersOf(CourseFile file) {
    return JoinedAnswers.of(file, Long.MAX_VALUE, courses::find);
  }

  /**
   * Writes down what he answered. An answer that was given or changed has today's date, as have all
   * if he said that they are still true; the others keep the date that they had. A form that does
   * not show the last screening and the last examination is refused.
   */
  public Reading<Long> answer(Account actor, CourseId id, ScreeningDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          if (draft.basis().filter(shown -> isNewerThan(file, shown)).isPresent()) {
            return Reading.refused(CHANGED_MEANWHILE);
          }
          Map<Condition, Answered> before = file.answers().last();
          var faults = new ArrayList<Fault>();
          Map<Condition, Answered> answers = merged(before, draft, now, faults);
          noToRest(draft, now, answersOf(file).counting(), answers);
          if (!changes.isTimeKnown() && opens(before, answers)) {
            faults.add(Fault.ofForm(ONLY_WHAT_STOPS));
          }
          if (answers.equals(before) && faults.isEmpty()) {
            faults.add(
                Fault.ofForm(
                    "Nothing was answered: choose an answer, or say that all is still true."));
          }
          return faults.isEmpty()
              ? Reading.of(changes.append(id, new Screened(answers), actor, now))
              : new Reading.Refused<>(faults);
        });
  }

  /** Whether an answer that was given or dated now is a no, which counts until a date. */
  private static boolean opens(Map<Condition, Answered> before, Map<Condition, Answered> answers) {
    return answers.entrySet().stream()
        .filter(one -> !one.getValue().equals(before.get(one.getKey())))
        .anyMatch(one -> one.getValue().answer() == Answer.NO);
  }

  private static Map<Condition, Answered> merged(
      Map<Condition, Answered> before, ScreeningDraft draft, Instant now, List<Fault> faults) {
    var answers = new EnumMap<Condition, Answered>(Condition.class);
    answers.putAll(before);
    if (draft.stillTrue()) {
      answers.replaceAll((condition, old) -> new Answered(old.answer(), now));
    }
    draft
        .answers()
        .forEach(
            (name, text) -> {
              Optional<Condition> condition = Condition.of(name);
              Optional<Answer> answer = answer(text);
              if (condition.isEmpty() || answer.isEmpty()) {
                faults.add(
                    Fault.ofForm("\"" + text + "\" is no answer to " + name + ": choose one."));
                return;
              }
              boolean isSame =
                  Optional.ofNullable(before.get(condition.get()))
                      .filter(old -> old.answer() == answer.get())
                      .isPresent();
              if (!isSame) {
                answers.put(condition.get(), new Answered(answer.get(), now));
              }
            });
    return answers;
  }

  /** Whether answers were written, found at an examination or wrong, after a form was shown. */
  private static boolean isNewerThan(CourseFile file, long shown) {
    return Stream.of(Screened.class, ExaminationRecorded.class, AnswerOverturned.class)
        .flatMap(kind -> file.inForce(kind).stream())
        .anyMatch(written -> written.entry().number() > shown);
  }

  private static void noToRest(
      ScreeningDraft draft, Instant now, Screening counting, Map<Condition, Answered> answers) {
    for (Condition condition : Condition.values()) {
      boolean hasAnswer = counting.answers().containsKey(condition);
      if (draft.noToRest().contains(condition.topic()) && !hasAnswer) {
        answers.putIfAbsent(condition, new Answered(Answer.NO, now));
      }
    }
  }

  static Optional<Answer> answer(String text) {
    return Arrays.stream(Answer.values()).filter(one -> one.words().equals(text)).findFirst();
  }

  /** Writes down a prescriber's decision to go on with a condition that asks for one. */
  public Reading<Long> decide(Account actor, CourseId id, String name, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          Optional<Condition> condition =
              Condition.of(name)
                  .filter(one -> answersOf(file).counting().answerTo(one) == Answer.YES);
          return condition.isEmpty()
              ? Reading.refused("He has no such condition on record: open the screening again.")
              : changes.appendWithReason(
                  id, new DecisionWritten(condition.get()), actor, now, Optional.empty(), reason);
        });
  }

  /**
   * Writes down that a yes was wrong, and what shows it. What an examination found is not lifted
   * so.
   *
   * @param shownBy a name of {@link ShownBy}
   */
  public Reading<Long> overturn(
      Account actor, CourseId id, String name, String shownBy, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) -> {
          Optional<Condition> condition =
              Condition.of(name).filter(one -> answersOf(file).kept(one).isPresent());
          Optional<ShownBy> shown =
              Arrays.stream(ShownBy.values()).filter(one -> one.name().equals(shownBy)).findFirst();
          var faults = new ArrayList<Fault>();
          if (condition.isEmpty()) {
            faults.add(Fault.ofForm(NO_YES));
          }
          if (shown.isEmpty()) {
            faults.add(new Fault(SHOWN_BY, "Choose what shows that the yes was wrong."));
          }
          if (reason.isBlank()) {
            faults.add(new Fault(CourseChanges.REASON, CourseChanges.REASON_MISSING));
          }
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          var fact = new AnswerOverturned(condition.orElseThrow(), shown.orElseThrow());
          return changes.appendWithReason(id, fact, actor, now, Optional.empty(), reason);
        });
  }

  /** Writes down where he stands before treatment. */
  public Reading<Long> baseline(Account actor, CourseId id, BaselineDraft draft) {
    var faults = new ArrayList<Fault>();
    Optional<ErectileScore> score = score(draft.score().strip(), faults);
    var hands =
        one(
            Baseline.Ability.values(),
            draft.hands(),
            BaselineDraft.HANDS,
            "how well his hands serve",
            faults);
    var sight =
        one(
            Baseline.Ability.values(),
            draft.sight(),
            BaselineDraft.SIGHT,
            "how well he sees",
            faults);
    var injector =
        one(
            Baseline.Injector.values(),
            draft.injector(),
            BaselineDraft.INJECTOR,
            "who will inject",
            faults);
    if (!faults.isEmpty()) {
      return changes.change(actor, By.CLINICIAN, id, (file, now) -> new Reading.Refused<>(faults));
    }
    var fact =
        new BaselineRecorded(
            new Baseline(score, hands.orElseThrow(), sight.orElseThrow(), injector.orElseThrow()));
    return changes.change(
        actor, By.CLINICIAN, id, (file, now) -> Reading.of(changes.append(id, fact, actor, now)));
  }

  private static Optional<ErectileScore> score(String text, List<Fault> faults) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<ErectileScore> score =
        text.matches("[0-9]{1,2}") ? ErectileScore.of(Integer.parseInt(text)) : Optional.empty();
    if (score.isEmpty()) {
      faults.add(
          new Fault(
              BaselineDraft.SCORE,
              "The score is a whole number from 1 to 25, not \"" + text + "\"."));
    }
    return score;
  }

  private static <E extends Enum<E>> Optional<E> one(
      E[] choices, String token, String field, String what, List<Fault> faults) {
    Optional<E> found =
        Arrays.stream(choices)
            .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(token))
            .findFirst();
    if (found.isEmpty()) {
      faults.add(new Fault(field, "Choose " + what + ". Not known is an answer."));
    }
    return found;
  }

  /** Writes down an examination of which only the day is known. */
  public Reading<Long> examine(
      Account actor, CourseId id, String day, String scarring, String note) {
    return examine(actor, id, day, "", scarring, note);
  }

  /**
   * Writes down an examination for curvature and scarring.
   *
   * @param clock the time of day as typed; may be empty. Of an hour that came twice the earlier one
   *     is meant: no more is known to be before it.
   */
  public Reading<Long> examine(
      Account actor, CourseId id, String day, String clock, String scarring, String note) {
    Reading<LocalDate> date = ClinicTime.readDate(day).at(DAY);
    var faults = new ArrayList<>(date.placed());
    date.found()
        .filter(one -> changes.isTimeKnown())
        .filter(one -> one.isAfter(LocalDate.ofInstant(changes.now(), time.zone())))
        .ifPresent(one -> faults.add(new Fault(DAY, ClinicTime.words(one) + " is still to come.")));
    Optional<Instant> at =
        date.found().filter(one -> faults.isEmpty()).flatMap(one -> at(one, clock, faults));
    Optional<Answer> found = answer(scarring);
    if (found.isEmpty()) {
      faults.add(new Fault(SCARRING, "Choose whether curvature or scarring was found."));
    }
    CourseChanges.textFault(note, NOTE).ifPresent(faults::add);
    if (!changes.isTimeKnown() && !found.equals(Optional.of(Answer.YES))) {
      faults.add(
          new Fault(
              SCARRING,
              "It is not known what time it is: only an examination that found it is saved now."));
    }
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) ->
            faults.isEmpty()
                ? changes.append(
                    id,
                    new ExaminationRecorded(date.found().orElseThrow(), at, found.orElseThrow()),
                    actor,
                    now,
                    note)
                : new Reading.Refused<>(faults));
  }

  private Optional<Instant> at(LocalDate day, String clock, List<Fault> faults) {
    if (clock.isBlank()) {
      return Optional.empty();
    }
    Reading<Instant> read = time.read(ClinicTime.dateText(day), clock, ClinicTime.Occurrence.FIRST);
    read.placed().forEach(fault -> faults.add(new Fault(TIME, fault.text())));
    read.found()
        .filter(at -> changes.isTimeKnown() && at.isAfter(changes.now()))
        .ifPresent(at -> faults.add(new Fault(TIME, time.words(at) + " is still to come.")));
    return read.found();
  }
}
