package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.StoryClock;

/**
 * The main job on real input, in a clinic that has nothing but accounts: a preparation, a syringe,
 * a protocol, one man's course, a report, advice with reasons, a signed next dose. The steps are
 * those of the US vial and syringe label (prescribing information, dual-chamber syringe, 2.1 and
 * 2.2).
 */
class MainJobBrowserTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private final TestServer server =
      TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people()));

  private final Browser browser = Browser.open();

  @AfterEach
  void close() {
    browser.close();
    server.close();
  }

  private Page page() {
    return browser.page();
  }

  private void open(String path) {
    page().navigate(server.at(path).toString());
  }

  private void signIn(Member member) {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(member.signInName());
    page().getByLabel("Password").fill(member.password());
    press("Sign in");
  }

  private void press(String button) {
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true))
        .click();
  }

  private void follow(String link) {
    page()
        .getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(link).setExact(true))
        .click();
  }

  private void check(String name, String value) {
    page().locator("input[name=" + name + "][value='" + value + "']").check();
  }

  private Locator answer() {
    return page().locator(".answer").first();
  }

  private void setUpTheClinic() {
    open("/preparations");
    if (page().getByRole(AriaRole.LINK, named("Alprostadil 20")).count() == 0) {
      follow("Look at the published compositions");
      follow("Compare Alprostadil 20");
      check("compared", "yes");
      check("inUse", "not_stated");
      press("Keep Alprostadil 20");
      open("/syringes");
      page()
          .locator("tr", containing("1 mL U-100 syringe"))
          .first()
          .getByRole(AriaRole.BUTTON)
          .click();
      open("/protocols");
      press("Sign this protocol for use");
    }
  }

  private static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  private static Page.LocatorOptions containing(String text) {
    return new Page.LocatorOptions().setHasText(text);
  }

  private void openCourse(String name, String number) {
    open("/courses/new");
    page().getByLabel("Full name").fill(name);
    page().getByLabel("Birth date").fill("1961-04-30");
    page().getByLabel("Record number").fill(number);
    check("contraindication", "no");
    check("group", "vasculogenic");
    check("preparation", "alprostadil-20");
    check("barrel", "u100-1");
    press("Open the course");
    assertThat(page()).hasTitle(name + " - Northgate Clinic");
  }

  /** Days later every session has ended. */
  private void signInLater(Duration ago, String address) {
    server.clock().goBack(ago);
    signIn(PRESCRIBER);
    page().navigate(address);
  }

  private void report(Duration ago, String mark, String grade, String minutes) {
    Instant at = server.clock().instant().minus(ago);
    follow("Enter a report");
    check("identified", "yes");
    page().getByLabel("Date of the injection").fill(at.atZone(ZONE).toLocalDate().toString());
    page()
        .getByLabel("Time of day, hours and minutes")
        .fill(DateTimeFormatter.ofPattern("HH:mm").format(at.atZone(ZONE)));
    page().locator("#mark").fill(mark);
    check("grade", grade);
    check("soft", "exactly");
    page().locator("#exactMinutes").fill(minutes);
    check("causes", "none_found");
    press("Save the report");
  }

  @Test
  void the_main_job_runs_from_an_empty_clinic_to_a_signed_next_dose() {
    StoryClock clock = server.clock();
    clock.goBack(Duration.ofDays(10));
    signIn(PRESCRIBER);
    assertThat(page().locator("main")).containsText("Do this first");
    browser.inspect("prescriber-today-empty");
    setUpTheClinic();
    browser.inspect("protocols");

    openCourse("Anselm Birk", "NG-1041");
    firstDoseIsSigned();
    String course = page().url();
    nextDoseIsSignedAfterAPartialResponse(course);
    doseSettlesAfterAUsefulResponse(course);
    lateReportOfFourHoursStopsEverything();
    clock.comeHome();
  }

  private void firstDoseIsSigned() {
    assertThat(answer()).hasText("Start: 0.12\u00a0mL");
    assertThat(page().locator(".dose .mark").first())
        .hasText("12-unit mark on a 1\u00a0mL U-100 syringe");
    assertThat(page().locator(".dose .content").first()).hasText("alprostadil 2.4\u00a0mcg");
    browser.inspect("course-start");
    press("Sign this dose");
    assertThat(page().locator(".notice")).containsText("The dose is signed.");
  }

  private void nextDoseIsSignedAfterAPartialResponse(String course) {
    signInLater(Duration.ofDays(8), course);
    report(Duration.ofHours(3), "12", "1", "20");
    assertThat(answer()).hasText("Increase: 0.25\u00a0mL");
    assertThat(page().locator("main")).containsText("Partial response: one step up.");
    assertThat(page().locator("main")).containsText("The last injection was too recent.");
    browser.inspect("course-step-up");
    press("Sign this dose");
  }

  private void doseSettlesAfterAUsefulResponse(String course) {
    signInLater(Duration.ofDays(5), course);
    report(Duration.ofHours(2), "25", "3", "45");
    assertThat(answer()).hasText("Same dose: 0.25\u00a0mL");
    follow("Show the signed dose");
    assertThat(page().locator(".dose .volume")).hasText("0.25\u00a0mL");
    browser.inspect("order");
    follow("Back to the course");
  }

  private void lateReportOfFourHoursStopsEverything() {
    report(Duration.ofMinutes(260), "25", "2", "250");
    assertThat(answer()).hasText("Stop");
    assertThat(page().locator("main")).containsText("Suspended by a safety check.");
    browser.inspect("course-emergency");
    follow("Show the signed dose");
    assertThat(page().locator(".suspended")).containsText("do not use this dose");
    browser.inspect("order-suspended");
    open("/");
    assertThat(page().locator("tbody tr").first()).containsText("Emergency to review");
    browser.inspect("today");
  }

  @Test
  void a_report_with_faults_keeps_what_was_typed_and_names_them_all() {
    signIn(PRESCRIBER);
    setUpTheClinic();
    openCourse("Corvin Adeyemi", "NG-1017");
    follow("Enter a report");
    page().getByLabel("Time of day, hours and minutes").fill("9 pm");
    page().locator("#mark").fill("5 U");
    press("Save the report");

    Locator faults = page().getByRole(AriaRole.ALERT);
    assertThat(faults.locator("li")).hasCount(6);
    assertThat(page().locator("#mark")).hasValue("5 U");
    browser.inspect("report-refused");
  }

  @Test
  void a_course_is_opened_by_the_keyboard_alone_and_a_nurse_cannot_sign() {
    signIn(PRESCRIBER);
    setUpTheClinic();
    press("Sign out");
    signIn(NURSE);

    open("/courses/new");
    browser.inspect("new-course");
    browser.tabTo("fullName");
    browser.type("Dorian Velte");
    browser.tabTo("birthDate");
    browser.type("1979-08-19");
    browser.tabTo("recordNumber");
    browser.type("NG-1066");
    browser.tabTo("contraindication");
    browser.press("ArrowDown");
    browser.tabTo("group");
    browser.press("ArrowDown", "ArrowDown");
    browser.tabToWords("Open the course");
    browser.press("Enter");

    assertThat(page()).hasTitle("Dorian Velte - Northgate Clinic");
    assertThat(answer()).containsText("Start: 0.12");
    assertThat(page().getByRole(AriaRole.BUTTON, named("Sign this dose"))).hasCount(0);
  }
}
