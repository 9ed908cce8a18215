package rungwise.web.today;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.today.DayList;
import rungwise.clinic.today.DayList.Shown;
import rungwise.clinic.today.DayRow;
import rungwise.clinic.today.DayRows.Listed;
import rungwise.web.page.Page;
import rungwise.web.start.StartChoices;
import rungwise.web.today.TodayPage.Answer;
import rungwise.web.today.TodayPage.Paging;
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

  private final DayList list;
  private final StartChoices choices;
  private final ClinicTime time;

  TodayController(DayList list, StartChoices choices, ClinicTime time) {
    this.list = list;
    this.choices = choices;
    this.time = time;
  }

  /**
   * One page of the list.
   *
   * @param page its number, from 1
   */
  @GetMapping("/")
  ModelAndView today(
      @AuthenticationPrincipal Account account, @RequestParam(defaultValue = "1") String page) {
    boolean mayOpen = account.may(Role.PRESCRIBER) || account.may(Role.NURSE_EDUCATOR);
    if (!isClinical(account)) {
      return Page.of("today/today", TodayPage.ofNobody(steps(account), mayOpen));
    }
    Shown shown = list.page(numberOf(page));
    boolean isStanding = CourseAccess.isStanding(account);
    List<OpenErectionView> open =
        shown.open().stream().map(one -> isStanding ? one : one.withoutAbout()).toList();
    List<Row> rows =
        shown.others().stream()
            .flatMap(one -> row(one, shown).stream())
            .map(row -> isStanding ? row : row.withoutAdvice())
            .toList();
    List<String> unreadable =
        shown.others().stream()
            .filter(one -> one.row().filter(row -> !row.isReadable()).isPresent())
            .filter(Listed::isCurrent)
            .map(one -> "/courses/" + one.course())
            .toList();
    boolean isEmpty = shown.counts().all() == 0;
    return Page.of(
        "today/today",
        new TodayPage(
            answer(shown.counts().open(), shown.counts().waiting()),
            open,
            rows,
            unreadable,
            "Nothing is recorded yet. Do this first:",
            isEmpty ? steps(account) : List.of(),
            mayOpen,
            Paging.of(shown)));
  }

  private static int numberOf(String page) {
    return page.matches("[0-9]{1,6}") ? Integer.parseInt(page) : 1;
  }

  private static String answer(int open, int waiting) {
    if (open == 0) {
      return waiting == 0 ? "Nobody needs you now." : need(waiting, "");
    }
    String notOver =
        open == 1
            ? "1 erection is not known to be over."
            : open + " erections are not known to be over.";
    return waiting == 0 ? notOver : notOver + " " + need(waiting, "more ");
  }

  private static String need(int waiting, String more) {
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

  /** A row that is made anew just now keeps its place and says nothing else. */
  private Optional<Row> row(Listed listed, Shown shown) {
    if (listed.row().filter(DayRow::isReadable).isEmpty()) {
      return listed.isCurrent()
          ? Optional.empty()
          : Optional.of(Row.beingComputed(listed.course(), "His record is being read", ""));
    }
    DayRow row = listed.row().orElseThrow();
    return Optional.of(
        listed.isCurrent()
            ? new Row(
                row.need(),
                row.man(),
                row.recordNumber(),
                row.course(),
                row.need().since(time.day(row.since(), shown.now())),
                row.advice(),
                row.because(),
                Optional.of(new Answer(row.sign(), row.answer())))
            : Row.beingComputed(row.course(), row.man(), row.recordNumber()));
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
