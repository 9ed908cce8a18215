package rungwise.web.today;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.access.CourseAccess;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.today.DayList;
import rungwise.clinic.today.DayList.Shown;
import rungwise.clinic.today.DayRow;
import rungwise.clinic.today.DayRows.Listed;
import rungwise.web.page.Assets;
import rungwise.web.page.Page;
import rungwise.web.page.Refreshing;
import rungwise.web.start.StartChoices;
import rungwise.web.today.TodayPage.Answer;
import rungwise.web.today.TodayPage.Called;
import rungwise.web.today.TodayPage.Paging;
import rungwise.web.today.TodayPage.Part;
import rungwise.web.today.TodayPage.Row;
import rungwise.web.today.TodayPage.Step;

/** The page after signing in: what waits for the reader, then for others. */
@Controller
final class TodayController {

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
  private final OwnPages own;
  private final Assets assets;

  TodayController(
      DayList list, StartChoices choices, ClinicTime time, OwnPages own, Assets assets) {
    this.list = list;
    this.choices = choices;
    this.time = time;
    this.own = own;
    this.assets = assets;
  }

  /** What a list that is open compares: another one once something may have changed. */
  @GetMapping(path = "/changes", produces = "text/plain;charset=UTF-8")
  @ResponseBody
  String changes() {
    return list.stamp();
  }

  /**
   * One page of the list, or the own page of who treats nobody.
   *
   * @param page its number, from 1
   */
  @GetMapping("/")
  ModelAndView today(
      @AuthenticationPrincipal Account account, @RequestParam(defaultValue = "1") String page) {
    if (!isTreating(account)) {
      return Page.of("today/own", own.of(account, steps(account)));
    }
    Set<Need> tasks =
        Arrays.stream(Need.values())
            .filter(need -> need.isTaskOf(account.roles()))
            .collect(Collectors.toUnmodifiableSet());
    String stamp = list.stamp();
    Shown shown = list.page(tasks, numberOf(page));
    boolean isStanding = CourseAccess.isStanding(account);
    List<OpenErectionView> open =
        shown.open().stream()
            .map(one -> isStanding ? one : one.withoutAbout(/* isOnCall= */ true))
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
            answer(
                shown.counts().open(),
                shown.counts().count(need -> need.isWaiting() && tasks.contains(need))),
            open,
            parts(shown, tasks, isStanding),
            unreadable,
            "Nothing is recorded yet. Do this first:",
            isEmpty ? steps(account) : List.of(),
            isStanding,
            Paging.of(shown),
            new Refreshing(stamp, assets.refreshScript())));
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

  private static boolean isTreating(Account account) {
    return CourseAccess.isStanding(account) || account.may(Role.ON_CALL_CLINICIAN);
  }

  /** A row that is made anew just now stands where its place was: before all that wait. */
  private List<Part> parts(Shown shown, Set<Need> tasks, boolean isStanding) {
    int waiting = shown.counts().count(need -> need.isWaiting() && !tasks.contains(need));
    return List.of(
            part("Yours, the most worrying first", shown, isStanding, tasks::contains),
            part(
                "Others' (" + waiting + "), the most worrying first",
                shown,
                isStanding,
                need -> need.isWaiting() && !tasks.contains(need)),
            part("Nothing now", shown, isStanding, need -> !need.isWaiting()))
        .stream()
        .filter(part -> !part.rows().isEmpty())
        .toList();
  }

  private Part part(String caption, Shown shown, boolean isStanding, Predicate<Need> isIn) {
    return new Part(
        caption,
        shown.others().stream()
            .filter(one -> isIn.test(placeOf(one)))
            .flatMap(one -> row(one, shown).stream())
            .map(row -> isStanding ? row : row.withoutAdvice())
            .toList());
  }

  private static Need placeOf(Listed listed) {
    return listed.isCurrent()
        ? listed.row().map(DayRow::need).orElse(Need.RECORD_NOT_SOUND)
        : Need.RECORD_NOT_SOUND;
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
                new Answer(row.sign(), row.answer()),
                Called.of(row.reach(), shown.now(), time))
            : Row.beingComputed(row.course(), row.man(), row.recordNumber()));
  }

  private List<Step> steps(Account account) {
    var steps = new ArrayList<Step>();
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
    if (steps.isEmpty() && isTreating(account)) {
      steps.add(CourseAccess.isStanding(account) ? COURSE : ASK);
    }
    return steps;
  }
}
