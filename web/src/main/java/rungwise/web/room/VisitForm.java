package rungwise.web.room;

import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.NoteDraft;
import rungwise.clinic.room.Observed;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.DrawnMark;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.page.Faults;
import rungwise.web.page.Typed;

/**
 * The forms of a visit as typed. The names of the fields of each begin with its own word, because
 * two of them stand on one page.
 */
record VisitForm(Typed typed) {

  static final String START = "start";
  static final String NOTE = "note";
  static final String END = "end";
  static final String SOFT = "soft";
  static final String LEFT = "left";
  static final String YES = "yes";
  static final String VIAL = "vial";

  private static final String DATE = "date";
  private static final String TIME = "time";

  /** Nothing typed yet: it is now, and the line is that of the signed dose. */
  static VisitForm now(CourseState state, Optional<Observed> observed, ClinicTime time) {
    Typed filled = Typed.NOTHING;
    for (String form : new String[] {START, NOTE, END}) {
      InjectionQuestions ask = ask(form, filled, Faults.NONE);
      filled =
          filled
              .with(ask.name(DATE), time.dateText(state.now()))
              .with(ask.name(TIME), time.timeText(state.now()));
    }
    var barrel = state.question().ladder().barrel();
    String mark =
        state
            .file()
            .signedDose()
            .map(signed -> DrawnMark.text(signed.fact().volume(), barrel))
            .orElse("");
    String firmest =
        observed
            .flatMap(Observed::firmest)
            .map(grade -> Integer.toString(grade.number()))
            .orElse("");
    return new VisitForm(filled.with("startMark", mark).with("endGrade", firmest));
  }

  private static InjectionQuestions ask(String form, Typed typed, Faults faults) {
    return new InjectionQuestions(form, typed, faults);
  }

  /** What was sent, over what the other form of the page shows. */
  VisitForm over(VisitForm shown) {
    Typed both = shown.typed();
    for (var field : typed.fields().entrySet()) {
      both = both.withAll(field.getKey(), field.getValue());
    }
    return new VisitForm(both);
  }

  InjectionQuestions ask(String form, Faults faults) {
    return ask(form, typed, faults);
  }

  StartDraft start() {
    InjectionQuestions form = ask(START, Faults.NONE);
    var draft =
        new StartDraft(
            form.text(DATE),
            form.text(TIME),
            form.saidOccurrence(),
            form.text("mark"),
            form.text("side"),
            form.text("hour"),
            form.text("systolic"),
            form.text("diastolic"),
            form.text("pulse"),
            typed.has(form.name("given"), YES));
    return draft.from(form.text(VIAL));
  }

  NoteDraft note() {
    InjectionQuestions form = ask(NOTE, Faults.NONE);
    return new NoteDraft(
        form.text(DATE),
        form.text(TIME),
        form.saidOccurrence(),
        form.text("moment"),
        form.text("grade"),
        form.text("systolic"),
        form.text("diastolic"),
        form.text("pulse"));
  }

  /** Whether it was said how it ended. */
  boolean saysHow() {
    String how = ask(END, Faults.NONE).text("how");
    return how.equals(SOFT) || how.equals(LEFT);
  }

  EndDraft end() {
    InjectionQuestions form = ask(END, Faults.NONE);
    return new EndDraft(
        form.text(DATE),
        form.text(TIME),
        form.saidOccurrence(),
        form.text("how").equals(LEFT),
        form.text("grade"),
        form.text("causes"),
        typed.all(form.name("wrong")),
        form.text("pain"),
        form.text("systolic"),
        form.text("diastolic"),
        form.text("pulse"),
        form.text("note"));
  }
}
