package rungwise.web.screening;

import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.screening.ScreeningView;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.screening.Answer;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The screening page.
 *
 * @param notice what was just done; may be empty
 * @param mayAnswer whether the person may write answers down
 * @param mayDecide whether the person may decide on a condition
 */
public record ScreeningPage(
    CourseView.Man man,
    String coursePath,
    String path,
    String notice,
    Faults faults,
    ScreeningView view,
    boolean mayAnswer,
    boolean mayDecide,
    boolean stillTrue,
    List<Group> groups,
    List<Kept> kept,
    List<Decision> decisions,
    BaselineForm baseline,
    ExaminationForm examination) {

  /**
   * The questions of a topic.
   *
   * @param hasUnasked whether a question has no answer on record
   * @param restName name of the check box that says no to those
   */
  public record Group(
      String words, List<Row> rows, boolean hasUnasked, String restName, boolean restTicked) {
    public Group {
      rows = List.copyOf(rows);
    }

    /** What is to be asked, or asked again. */
    public List<Row> open() {
      return rows.stream().filter(row -> !row.question().isSettled()).toList();
    }

    /** What is settled. */
    public List<Row> settled() {
      return rows.stream().filter(row -> row.question().isSettled()).toList();
    }
  }

  /** A question, and its answers to pick from. */
  public record Row(ScreeningView.Question question, Choice pick) {

    /** Whether another answer was picked than stands on record. */
    public boolean isChanged() {
      return pick.options().stream()
          .anyMatch(option -> option.picked() != option.value().equals(question.answer()));
    }
  }

  /** A condition on which a prescriber has to decide. */
  public record Decision(ScreeningView.Question question, Field reason) {}

  /** A yes that counts, and the form by which a prescriber writes that it was wrong. */
  public record Kept(ScreeningView.KeptYes yes, Choice shownBy, Field reason, boolean isOpen) {}

  /** Where he stands before treatment. */
  public record BaselineForm(Field score, Choice hands, Choice sight, Choice injector) {}

  /** The examination for curvature and scarring. */
  public record ExaminationForm(Field day, Field time, Choice scarring, Field note) {}

  public ScreeningPage {
    groups = List.copyOf(groups);
    kept = List.copyOf(kept);
    decisions = List.copyOf(decisions);
  }

  /** Whether anything is to be asked, or asked again. */
  public boolean hasOpen() {
    return groups.stream().anyMatch(group -> !group.open().isEmpty());
  }

  /** Whether anything is settled. */
  public boolean hasSettled() {
    return groups.stream().anyMatch(group -> !group.settled().isEmpty());
  }

  static ScreeningPage of(
      CourseState state,
      CourseView course,
      Account actor,
      ClinicTime time,
      ScreeningForms forms,
      Faults faults) {
    ScreeningView view = ScreeningView.of(state, course, time);
    String coursePath = "/courses/" + course.id();
    var choices = new ScreeningChoices(forms, faults);
    return new ScreeningPage(
        course.man(),
        coursePath,
        coursePath + "/screening",
        "",
        faults,
        view,
        By.CLINICIAN.includes(actor),
        By.PRESCRIBER.includes(actor),
        forms.isTicked(ScreeningForms.STILL_TRUE),
        view.groups().stream().map(group -> group(group, forms)).toList(),
        view.kept().stream().map(choices::kept).toList(),
        view.undecided().stream().map(one -> decision(one, forms, faults)).toList(),
        choices.baseline(state.file().baseline()),
        choices.examination(time.dateText(state.now())));
  }

  ScreeningPage withNotice(String text) {
    return new ScreeningPage(
        man,
        coursePath,
        path,
        text,
        faults,
        view,
        mayAnswer,
        mayDecide,
        stillTrue,
        groups,
        kept,
        decisions,
        baseline,
        examination);
  }

  private static Group group(ScreeningView.Group group, ScreeningForms forms) {
    String rest = ScreeningForms.restOf(group.token());
    return new Group(
        group.words(),
        group.questions().stream().map(one -> new Row(one, pick(one, forms))).toList(),
        group.hasUnasked(),
        rest,
        forms.isTicked(rest));
  }

  private static Choice pick(ScreeningView.Question question, ScreeningForms forms) {
    String name = ScreeningForms.answerTo(question.name());
    String picked = forms.said(name, question.answer());
    return Choice.of(
        name,
        question.words(),
        List.of(
            option(Answer.YES, picked),
            option(Answer.NO, picked),
            option(Answer.NOT_KNOWN, picked)));
  }

  private static Option option(Answer answer, String picked) {
    return new Option(answer.words(), answer.words(), "", answer.words().equals(picked));
  }

  private static Decision decision(
      ScreeningView.Question question, ScreeningForms forms, Faults faults) {
    String name = ScreeningForms.reasonFor(question.name());
    return new Decision(
        question,
        Field.of(Field.Kind.TEXT, name, "Reason to go on")
            .withHint("It stays on record with your name.")
            .withValue(forms.said(name))
            .withFaults(faults));
  }
}
