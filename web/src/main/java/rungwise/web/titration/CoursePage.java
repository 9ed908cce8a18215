package rungwise.web.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.joining.Joining;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.sheet.CourseView.ReasonLine;
import rungwise.dosing.decision.TitrationRule;
import rungwise.web.page.DoseLines;
import rungwise.web.page.DosePicture;
import rungwise.web.page.Faults;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/**
 * The course page.
 *
 * @param notice what was just done; may be empty
 * @param sent the form of the page that was refused, as typed; nothing if none was
 * @param answer the largest line on the page
 * @param picture the drawn syringe of the proposed dose
 * @param drawings schedule, time line and places
 * @param checkFirst the last report, where the response model finds it very unlikely
 * @param same whether another course is, or may be, of the same man
 * @param sign the form that signs a dose, for a prescriber where one can be signed
 */
public record CoursePage(
    CourseView view,
    String path,
    String notice,
    Faults faults,
    Typed sent,
    String answer,
    Optional<DoseLines> dose,
    Optional<String> picture,
    CourseDrawings.Brief drawings,
    Optional<ReasonLine> checkFirst,
    Optional<SignForm> sign,
    boolean isPrescriber,
    boolean isClinical,
    LiftingForms lifting,
    Joining.Standing same) {

  /** Whether the proposed dose is the one that is signed, and in force. */
  public boolean isSignedAlready() {
    return view.signed()
        .filter(signed -> !signed.isSuspended())
        .filter(signed -> view.proposed().filter(signed.dose()::equals).isPresent())
        .isPresent();
  }

  /** How the proposed dose stands: nobody takes a proposal for an order. */
  public String standing() {
    return isSignedAlready() ? "The dose that is signed" : "Proposed, not signed";
  }

  /**
   * Something that is not on record.
   *
   * @param way behind the address of the course, where it is written down
   * @param link what is done there
   */
  public record Missing(String words, String way, String link) {}

  /** What is not on record, in the order in which it is asked; may be empty. */
  public List<Missing> missing() {
    var missing = new ArrayList<Missing>();
    CourseView.Around around = view.around();
    int open = around.openQuestions();
    if (open > 0) {
      String questions = open == 1 ? "1 question" : open + " questions";
      missing.add(
          new Missing(questions + " of the screening open", ClearingPage.SCREENING.path(), "Ask"));
    }
    around.undecided().stream()
        .map(one -> "A prescriber has to decide: " + one.words())
        .map(words -> new Missing(words, ClearingPage.SCREENING.path(), "Decide"))
        .forEach(missing::add);
    if (around.vial().isEmpty()) {
      missing.add(new Missing("His vial", ClearingPage.VIAL.path(), "Write it down"));
    }
    if (around.isExaminationDue()) {
      missing.add(
          new Missing(
              "An examination, " + around.examination(),
              ClearingPage.EXAMINATION.path(),
              "Write it down"));
    }
    view.ready().stream()
        .filter(item -> !item.isOnRecord())
        .map(item -> new Missing(item.words(), ClearingPage.BEFORE_HOME.path(), "Before home"))
        .forEach(missing::add);
    return List.copyOf(missing);
  }

  static CoursePage of(
      CourseView view, Joining.Standing same, Account actor, StartChoices choices) {
    boolean isPrescriber = actor.may(Role.PRESCRIBER);
    return new CoursePage(
        view,
        "/courses/" + view.id(),
        "",
        Faults.NONE,
        Typed.NOTHING,
        answer(view),
        view.proposed().map(DoseLines::of),
        view.proposed().flatMap(dose -> DosePicture.svg(dose, "proposed")),
        CourseDrawings.brief(view),
        view.reasons().stream().filter(CoursePage::isToCheckFirst).findFirst(),
        isPrescriber ? SignForm.of(view) : Optional.empty(),
        isPrescriber,
        isClinical(actor),
        LiftingForms.of(view.lifting(), choices),
        same);
  }

  /** Whether somebody enters and corrects what a man says. */
  public static boolean isClinical(Account actor) {
    return actor.may(Role.PRESCRIBER)
        || actor.may(Role.NURSE_EDUCATOR)
        || actor.may(Role.ON_CALL_CLINICIAN);
  }

  private static boolean isToCheckFirst(ReasonLine reason) {
    return reason.rule() == TitrationRule.REPORT_UNLIKELY;
  }

  CoursePage withNotice(String text) {
    return with(text, faults, Typed.NOTHING);
  }

  /** The same after one of its forms was refused, with what was typed into it. */
  CoursePage refused(Typed typed, Faults found) {
    return with(notice, found, typed);
  }

  private CoursePage with(String said, Faults found, Typed typed) {
    return new CoursePage(
        view,
        path,
        said,
        found,
        typed,
        answer,
        dose,
        picture,
        drawings,
        checkFirst,
        sign.map(form -> form.asTyped(typed).withFaults(found)),
        isPrescriber,
        isClinical,
        lifting.asTyped(typed).withFaults(found),
        same);
  }

  private static String answer(CourseView view) {
    return view.decision() + view.proposed().map(dose -> ": " + dose.volume()).orElse("");
  }
}
