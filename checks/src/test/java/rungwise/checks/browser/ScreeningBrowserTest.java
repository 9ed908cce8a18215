package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.people.Invitation;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;

/** Screening, what comes before home use, and vials, in the invented clinic of the demo. */
class ScreeningBrowserTest extends AtTheDesk {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");

  /** Long enough for every answer to be older than the protocol allows. */
  private static final Duration LATER = Duration.ofDays(500);

  /** Nobody has screened him. */
  private static final String UNSCREENED = "Hannes Tamm";

  /** He has no condition, no injection yet, and a vial. */
  private static final String AT_FIRST_DOSE = "Gideon Marsh";

  /** His mixture holds three drugs. */
  private static final String ON_A_MIXTURE = "Matthis Okoro";

  ScreeningBrowserTest() {
    super(TestServer.withStory());
  }

  private Locator faults() {
    return page().getByRole(AriaRole.ALERT).locator("li");
  }

  private Locator notice() {
    return page().locator(".notice");
  }

  private void signInInstead(Member member) {
    String here = page().url();
    press("Sign out");
    signIn(member);
    page().navigate(here);
  }

  /** Opens a page of the course of that man. */
  private void openOf(String man, String place) {
    open("/");
    page().getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(man)).first().click();
    assertThat(page()).hasTitle(man + " - Northgate Clinic");
    page().navigate(page().url() + place);
    assertThat(page().locator("h1")).hasText(man);
  }

  private void fill(String id, String text) {
    page().locator("#" + id).fill(text);
  }

  private String day(int fromToday) {
    return LocalDate.ofInstant(server.clock().instant(), ZONE).plusDays(fromToday).toString();
  }

  /** A settled question stands in a line, which opens on its answers. */
  private void answerAnew(String question, String answer) {
    page().locator("details.settled:has([name=answer-" + question + "]) > summary").click();
    check("answer-" + question, answer);
  }

  private void noToEverything() {
    for (String topic : List.of("BLOOD", "PENIS", "HEART", "MEDICINES")) {
      browser.tabTo("rest-" + topic);
      browser.press("Space");
    }
  }

  @Test
  void a_screening_is_answered_by_the_keyboard_alone_and_leads_to_a_decision() {
    signIn(NURSE);
    openOf(UNSCREENED, "/screening");
    assertThat(answer()).containsText("Not screened yet: ");
    assertThat(page().locator(".still-open li").first()).containsText(": all ");
    assertThat(page().locator(".settled")).hasCount(0);
    assertThat(main()).containsText("no published figure");
    browser.inspect("screening-empty");

    noToEverything();
    browser.tabToWords("Save the answers");
    browser.press("Enter");
    assertThat(answer()).hasText("Nothing in the screening stops him");
    assertThat(main()).containsText("Cardiac class low");
    assertThat(page().locator(".rest")).hasCount(1);

    assertThat(page().locator(".still-open, .ask")).hasCount(0);
    page().locator("details.settled:has([name=answer-LONG_ERECTION_BEFORE]) > summary").focus();
    browser.press("Enter");
    browser.tabTo("answer-LONG_ERECTION_BEFORE-1");
    browser.press("ArrowUp");
    browser.tabToWords("Save the answers");
    browser.press("Enter");
    assertThat(answer()).hasText("A prescriber has to decide");
    assertThat(main()).containsText("A prescriber decides.");
    assertThat(main().getByRole(AriaRole.BUTTON)).hasCount(3);
    browser.inspect("screening-nurse");
  }

  @Test
  void a_prescriber_decides_with_a_reason_and_the_decision_stays_on_the_page() {
    signIn(PRESCRIBER);
    openOf(AT_FIRST_DOSE, "/screening");
    answerAnew("MAO_INHIBITOR", "yes");
    answerAnew("HEART_FAILURE_2", "yes");
    answerAnew("PDE5_INHIBITOR", "yes");
    press("Save the answers");
    assertThat(answer()).hasText("A prescriber has to decide");
    assertThat(main()).containsText("Cardiac class intermediate");
    browser.inspect("screening-decide");

    fill("reason-MAO_INHIBITOR", "  ");
    press("Go on with it (An MAO inhibitor)");
    assertThat(faults()).hasCount(1);
    browser.inspect("screening-decision-refused");
    fill("reason-MAO_INHIBITOR", "Rescue planned without phenylephrine");
    press("Go on with it (An MAO inhibitor)");
    fill("reason-HEART_FAILURE_2", "Cardiologist agrees");
    press("Go on with it (Heart failure, NYHA class II)");

    assertThat(answer()).hasText("Nothing in the screening stops him");
    assertThat(main()).containsText("Rescue planned without phenylephrine");
    assertThat(main()).containsText("Tobias Wren goes on with it");
    browser.inspect("screening-decided");
  }

  @Test
  void a_yes_that_is_denied_later_counts_until_a_prescriber_writes_that_it_was_wrong() {
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/screening");
    answerAnew("SICKLE_CELL", "yes");
    press("Save the answers");
    answerAnew("SICKLE_CELL", "no");
    press("Save the answers");
    assertThat(answer()).containsText("Contraindicated: sickle cell");
    assertThat(main()).containsText("It is kept and changes nothing.");
    browser.inspect("screening-denied-nurse");

    signInInstead(PRESCRIBER);
    browser.inspect("screening-denied");
    fill("wrong-SICKLE_CELL", "  ");
    press("Write down that the yes was wrong (Sickle cell disease or trait)");
    assertThat(faults()).hasCount(2);
    check("shownBy-SICKLE_CELL", "TEST");
    fill("wrong-SICKLE_CELL", "Electrophoresis of today is normal");
    press("Write down that the yes was wrong (Sickle cell disease or trait)");

    assertThat(answer()).hasText("Nothing in the screening stops him");
    browser.inspect("screening-yes-was-wrong");
  }

  @Test
  void scarring_found_at_an_examination_contraindicates_and_an_older_form_cannot_undo_it() {
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/screening");
    Page older = page().context().newPage();
    older.navigate(page().url());

    fill("day", day(1));
    press("Save the examination");
    assertThat(faults()).hasCount(2);
    browser.inspect("screening-examination-refused");
    fill("day", day(0));
    check("scarring", "yes");
    fill("note", "Firm plaque on the left, 5 mm");
    press("Save the examination");
    assertThat(answer()).containsText("Contraindicated: curvature, angulation, scarring");
    assertThat(main()).containsText("Firm plaque on the left");
    browser.inspect("screening-contraindicated");

    older.locator("#stillTrue").check();
    older.getByText("Save the answers").click();
    assertThat(older.getByRole(AriaRole.ALERT)).containsText("changed since this page was opened");
    older.close();
  }

  @Test
  void answers_older_than_a_year_are_said_to_be_still_true_in_one_step() {
    server.clock().goBack(LATER.negated());
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/screening");
    assertThat(answer()).hasText("Answers are older than 12\u00a0months: ask what is still true");
    assertThat(page().locator(".still-open li")).hasCount(4);
    assertThat(
            page()
                .locator("details.settled")
                .filter(new Locator.FilterOptions().setHasNotText("nothing with this preparation")))
        .hasCount(0);
    browser.inspect("screening-expired");

    page().locator("#stillTrue").check();
    press("Save the answers");

    assertThat(answer()).hasText("Nothing in the screening stops him");
  }

  @Test
  void hands_that_are_not_enough_ask_for_his_partner_or_a_device() {
    signIn(NURSE);
    openOf(UNSCREENED, "/screening");
    fill("score", "30");
    press("Save the baseline");
    assertThat(faults()).hasCount(4);
    assertThat(page().locator("#score")).hasValue("30");
    browser.inspect("screening-baseline-refused");

    fill("score", "9");
    check("hands", "not_enough");
    check("sight", "good");
    check("injector", "himself");
    press("Save the baseline");

    assertThat(main()).containsText("Score 9 (moderate)");
    assertThat(main()).containsText("teach his partner, or use a device");
    browser.inspect("screening-baseline");
  }

  @Test
  void what_comes_before_home_is_recorded_item_by_item() {
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/before-home");
    assertThat(answer()).hasText("Not ready for home");
    assertThat(main()).containsText("3 of 3 not on record");
    assertThat(main()).not().containsText("a mixture that no label covers");
    browser.inspect("before-home-empty");

    fill("EMERGENCY_PLAN-hospital", "Quellmoor Hospital (invented)");
    fill("EMERGENCY_PLAN-afterHours", " ");
    fill("EMERGENCY_PLAN-transport", " ");
    fill("EMERGENCY_PLAN-day", day(2));
    page().locator("form:has(#EMERGENCY_PLAN-day) button").click();
    assertThat(faults()).hasCount(3);
    assertThat(page().locator("#EMERGENCY_PLAN-hospital"))
        .hasValue("Quellmoor Hospital (invented)");
    browser.inspect("before-home-refused");

    fill("EMERGENCY_PLAN-afterHours", "555 0142");
    fill("EMERGENCY_PLAN-transport", "His partner drives");
    fill("EMERGENCY_PLAN-day", day(0));
    page().locator("form:has(#EMERGENCY_PLAN-day) button").click();
    assertThat(notice()).hasText("It is on record.");
    assertThat(main())
        .containsText("Quellmoor Hospital (invented); after hours 555 0142; His partner drives");
    assertThat(main()).containsText("2 of 3 not on record");
    browser.inspect("before-home");
  }

  @Test
  void a_mixture_asks_for_consent_and_for_each_strength_of_its_label() {
    signIn(NURSE);
    openOf(ON_A_MIXTURE, "/before-home");
    assertThat(main()).containsText("he has agreed to a mixture that no label covers");
    browser.inspect("before-home-mixture");

    openOf(ON_A_MIXTURE, "/vial");
    page().getByText("Enter a vial that he was given").click();
    for (String component : List.of("papaverine", "phentolamine", "alprostadil")) {
      assertThat(page().locator("#new-strength-" + component)).isVisible();
      assertThat(page().locator("#new-strength-" + component)).hasValue("");
    }
    assertThat(page().locator("#new-strength-atropine")).isHidden();
    browser.inspect("vial-mixture");
  }

  @Test
  void a_vial_whose_label_differs_is_kept_and_not_to_be_used() {
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/vial");
    assertThat(answer()).hasText("The label says what was ordered, and the vial is in date");
    browser.inspect("vial");

    page().getByText("Enter a vial that he was given").click();
    fill("new-lot", "L-77");
    fill("new-strength-alprostadil", ".5");
    fill("new-beyondUse", day(90));
    fill("new-made", day(91));
    press("Save this vial");
    assertThat(faults()).hasCount(2);
    assertThat(page().locator("#new-lot")).hasValue("L-77");
    browser.inspect("vial-refused");

    fill("new-strength-alprostadil", "40");
    fill("new-made", day(0));
    press("Save this vial");
    assertThat(answer()).hasText("The label differs from the order: not to be used");
    assertThat(notice()).containsText("this vial is not to be used");
    assertThat(main()).containsText("Earlier vials");
    browser.inspect("vial-differs");
  }

  @Test
  void an_addendum_says_when_a_vial_was_opened_and_shortens_its_use() {
    signIn(NURSE);
    openOf(AT_FIRST_DOSE, "/vial");
    page().getByText("He opened it, or something was written down wrongly").click();
    fill("addendum-opened", day(0));
    fill("addendum-daysInUse", "28");
    fill("addendum-reason", "Opened today");
    press("Add to the record");

    assertThat(main()).containsText("good for 28\u00a0days once opened");
    assertThat(main()).containsText("24\u00a0h after it was dissolved");
    assertThat(main()).not().containsText("Earlier vials");
    browser.inspect("vial-opened");
  }

  @Test
  void a_man_without_a_vial_is_told_to_enter_one() {
    signIn(NURSE);
    openOf(UNSCREENED, "/vial");

    assertThat(answer()).hasText("No vial is on record");
    browser.inspect("vial-empty");
  }

  @Test
  void a_programme_lead_reads_and_finds_no_form() {
    People people = server.clinic().people();
    var administrator = people.list().getFirst().id();
    String password = "grey-harbour-two-lamps";
    Invitation invitation =
        people.invite(administrator, "lena", "Lena Hook", Set.of(Role.PROGRAMME_LEAD)).orThrow();
    people.accept(invitation.code().text(), "lena", Optional.empty(), password).orThrow();
    signIn("lena", password);
    open("/");
    assertThat(page().locator("main")).not().containsText(AT_FIRST_DOSE);
    page().getByLabel("Find a man").fill(AT_FIRST_DOSE);
    press("Find");
    follow(AT_FIRST_DOSE);
    page().locator("input[name=accessReason]").first().check();
    press("Open the course");
    assertThat(page().locator("h1")).hasText(AT_FIRST_DOSE);
    String course = page().url();

    for (String place : List.of("/screening", "/before-home", "/vial")) {
      page().navigate(course + place);
      assertThat(page().locator("main button")).hasCount(0);
      browser.inspect(place.substring(1) + "-read");
    }
    signInInstead(PRESCRIBER);
    assertThat(page().locator("main button")).hasCount(3);
  }
}
