package rungwise.web.today;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.day.DayLine;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.CourseViews;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.Titration;
import rungwise.clinic.titration.Titration.Everybody;
import rungwise.web.page.Page;
import rungwise.web.start.StartChoices;
import rungwise.web.today.TodayPage.Row;
import rungwise.web.today.TodayPage.Step;

/** The page after signing in: every course, the most worrying one first. */
@Controller
final class TodayController {

  private static final Step INVITE =
      new Step("Invite the people who work here.", "/people/invite", "Invite somebody");
  private static final Step TRAIL =
      new Step("Read who looked at what, and who changed it.", "/audit", "Audit trail");
  private static final Step ASK =
      new Step(
          "Ask your administrator for the roles you need, if a page you need is not in the list"
              + " above.",
          "",
          "");
  private static final Step PREPARATIONS =
      new Step("Enter the preparations that your vials hold.", "/preparations", "Preparations");
  private static final Step SYRINGES =
      new Step("Choose the syringes that you hand out.", "/syringes", "Syringes");
  private static final Step PROTOCOLS =
      new Step("Read a sample protocol and sign it for use.", "/protocols", "Protocols");
  private static final Step COURSE =
      new Step("Open the first course.", "/courses/new", "New course");

  private final Titration titration;
  private final CourseViews views;
  private final StartChoices choices;
  private final ClinicTime time;

  TodayController(Titration titration, CourseViews views, StartChoices choices, ClinicTime time) {
    this.titration = titration;
    this.views = views;
    this.choices = choices;
    this.time = time;
  }

  @GetMapping("/")
  ModelAndView today(@AuthenticationPrincipal Account account) {
    Everybody everybody =
        isClinical(account) ? titration.everybody() : new Everybody(List.of(), List.of());
    List<Row> rows =
        everybody.courses().stream()
            .map(state -> row(state))
            .map(row -> CourseAccess.isStanding(account) ? row : row.withoutAdvice())
            .sorted(
                Comparator.comparing(Row::need).thenComparing(Row::since).thenComparing(Row::man))
            .toList();
    List<String> unreadable =
        everybody.unreadable().stream().map(course -> "/courses/" + course).toList();
    List<OpenErectionView> open = rows.stream().flatMap(row -> row.open().stream()).toList();
    List<Row> others = rows.stream().filter(row -> row.open().isEmpty()).toList();
    long waiting =
        others.stream().filter(row -> row.need().isWaiting()).count() + unreadable.size();
    boolean mayOpen = account.may(Role.PRESCRIBER) || account.may(Role.NURSE_EDUCATOR);
    return Page.of(
        "today/today",
        new TodayPage(
            isClinical(account)
                ? answer(open.size(), waiting)
                : "Your roles show you no man's course.",
            open,
            others,
            unreadable,
            isClinical(account)
                ? "Nothing is recorded yet. Do this first:"
                : "What you can do here",
            rows.isEmpty() && unreadable.isEmpty() ? steps(account) : List.of(),
            mayOpen));
  }

  private static String answer(int open, long waiting) {
    if (open == 0) {
      return waiting == 0 ? "Nobody needs you now." : need(waiting, "");
    }
    String notOver =
        open == 1
            ? "1 erection is not known to be over."
            : open + " erections are not known to be over.";
    return waiting == 0 ? notOver : notOver + " " + need(waiting, "more ");
  }

  private static String need(long waiting, String more) {
    return waiting == 1
        ? "1 " + more + "man needs you now."
        : waiting + " " + more + "men need you now.";
  }

  private static boolean isClinical(Account account) {
    return account.may(Role.PRESCRIBER)
        || account.may(Role.NURSE_EDUCATOR)
        || account.may(Role.ON_CALL_CLINICIAN)
        || account.may(Role.PROGRAMME_LEAD);
  }

  private Row row(CourseState state) {
    var view = views.of(state);
    DayLine line = view.day();
    return new Row(
        line.need(),
        view.open(),
        view.man().fullName(),
        view.man().recordNumber(),
        view.id(),
        line.since(),
        line.need().since(time.day(line.since(), state.now())),
        view.decision() + view.proposed().map(dose -> " " + dose.volumeAndMark()).orElse(""),
        view.because(),
        Optional.of(view.now()));
  }

  private List<Step> steps(Account account) {
    var steps = new ArrayList<Step>();
    if (account.may(Role.ADMINISTRATOR)) {
      steps.add(INVITE);
    }
    if (account.may(Role.AUDITOR)) {
      steps.add(TRAIL);
    }
    boolean isKeeper = account.may(Role.PRESCRIBER) || account.may(Role.PROGRAMME_LEAD);
    if (isKeeper && choices.preparations().get().isEmpty()) {
      steps.add(PREPARATIONS);
    }
    if (isKeeper && choices.barrels().get().isEmpty()) {
      steps.add(SYRINGES);
    }
    if (isKeeper && choices.protocols().get().isEmpty()) {
      steps.add(PROTOCOLS);
    }
    if (steps.isEmpty()) {
      steps.add(account.may(Role.PRESCRIBER) || account.may(Role.NURSE_EDUCATOR) ? COURSE : ASK);
    }
    return steps;
  }
}
