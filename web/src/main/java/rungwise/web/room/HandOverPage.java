package rungwise.web.room;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.people.Account;
import rungwise.clinic.room.HandOverDraft;
import rungwise.clinic.room.VisitFields;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The page on which a man who left while it was firm is handed to somebody on call.
 *
 * @param path where the form is sent
 */
public record HandOverPage(
    String path,
    CourseView view,
    Faults faults,
    Choice to,
    Field tries,
    Field date,
    Field time,
    Optional<Choice> occurrence,
    Field words) {

  static HandOverPage of(
      CourseView view, List<Account> onCall, Typed typed, ClinicTime time, Faults faults) {
    var ask = new InjectionQuestions("", typed, faults);
    List<Option> people =
        onCall.stream().map(one -> new Option(one.id().text(), one.fullName(), "", false)).toList();
    return new HandOverPage(
        "/courses/" + view.id() + "/hand-over",
        view,
        faults,
        ask.choice(VisitFields.TO, "Who calls him from now on", people),
        ask.field(Field.Kind.AMOUNT, VisitFields.TRIES, "How often it was tried to reach him")
            .withHint("At least once, such as 2"),
        ask.field(Field.Kind.DATE, ClinicTime.DATE_FIELD, "Date of the last try"),
        ask.field(Field.Kind.TEXT, ClinicTime.TIME_FIELD, "Time of the last try")
            .withHint("24-hour clock"),
        ask.occurrence(time),
        ask.field(Field.Kind.TEXT, VisitFields.WORDS, "Who was tried, and what came of it"));
  }

  static HandOverDraft draft(Typed typed) {
    var ask = new InjectionQuestions("", typed, Faults.NONE);
    return new HandOverDraft(
        ask.text(VisitFields.TO),
        ask.text(VisitFields.TRIES),
        ask.text(ClinicTime.DATE_FIELD),
        ask.text(ClinicTime.TIME_FIELD),
        ask.saidOccurrence(),
        ask.text(VisitFields.WORDS));
  }
}
