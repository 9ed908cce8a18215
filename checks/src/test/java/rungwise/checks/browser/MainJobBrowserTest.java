package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.StoryClock;
import rungwise.dosing.history.Place;

/**
 * The main job on real input, by two people, in a clinic that has nothing but accounts: a
 * preparation, a syringe, a protocol, one man's screening, vial, first injection under observation,
 * teaching, an order for home, reports by telephone, advice with reasons, a signed next dose. The
 * steps are those of the US vial and syringe label (prescribing information, dual-chamber syringe,
 * 2.1 and 2.2).
 */
class MainJobBrowserTest extends AtTheDesk {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");

  MainJobBrowserTest() {
    super(TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people())));
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
      page()
          .locator("section", containing("Alprostadil alone, US vial and syringe label"))
          .getByRole(AriaRole.BUTTON)
          .click();
    }
  }

  private void openCourse(String name, String number) {
    open("/courses/new");
    page().getByLabel("Full name").fill(name);
    page().getByLabel("Birth date").fill("1961-04-30");
    page().getByLabel("Record number").fill(number);
    check("group", "vasculogenic");
    check("preparation", "alprostadil-20");
    check("barrel", "u100-1");
    press("Open the course");
    assertThat(page()).hasTitle(name + " - Northgate Clinic");
  }

  /** Days later every session has ended. */
  private void signInLater(Member member, Duration ago, String address) {
    settle();
    server.clock().goBack(ago);
    signIn(member);
    page().navigate(address);
  }

  private String clock(Instant at) {
    return DateTimeFormatter.ofPattern("HH:mm").format(at.atZone(ZONE));
  }

  private static String day(Instant at) {
    return at.atZone(ZONE).toLocalDate().toString();
  }

  /** A report by telephone; the end is exact, or one of the quick choices. */
  private void report(Duration ago, String mark, String grade, String soft, String minutes) {
    Instant at = server.clock().instant().minus(ago);
    follow("Enter a report");
    page().locator("input[name=identified]").check();
    check("day", "other");
    page().locator("#date").fill(day(at));
    page().locator("#time").fill(clock(at));
    page().locator("#mark").fill(mark);
    check("grade", grade);
    check("soft", soft);
    if (!minutes.isEmpty()) {
      page().locator("#exactMinutes").fill(minutes);
    }
    if (grade.compareTo("3") < 0) {
      check("causes", "none_found");
    }
    press("Save the report");
  }

  private void signProposed(Place place) {
    page().locator(".taps button", containing(place.words())).click();
    assertThat(page().locator(".notice")).containsText("The dose is signed.");
  }

  private void screen(String course) {
    page().navigate(course + "/screening");
    for (String topic : List.of("BLOOD", "PENIS", "HEART", "MEDICINES")) {
      page().locator("#rest-" + topic).check();
    }
    press("Save the answers");
    assertThat(answer()).hasText("Nothing in the screening stops him");
  }

  private void receiveVial(String course) {
    page().navigate(course + "/vial");
    Instant now = server.clock().instant();
    page().locator("#new-lot").fill("L-4711");
    page().locator("#new-strength-alprostadil").fill("20");
    page().locator("#new-beyondUse").fill(day(now.plus(Duration.ofDays(60))));
    press("Save this vial");
    assertThat(answer()).containsText("The label says what was ordered");
  }

  private void watchTheInjection(String course, String grade) {
    Instant injected = server.clock().instant().minus(Duration.ofMinutes(50));
    page().navigate(course + "/visit");
    page().locator("#startDate").fill(day(injected));
    page().locator("#startTime").fill(clock(injected));
    page().locator("#startSystolic").fill("128");
    page().locator("#startDiastolic").fill("76");
    page().locator("#startPulse").fill("72");
    check("startSide", "HIS_LEFT");
    page().locator("#startHour").selectOption("2");
    press("He was injected");
    browser.inspect("main-under-observation");
    Instant soft = injected.plus(Duration.ofMinutes(40));
    check("endHow", "soft");
    page().locator("#endDate").fill(day(soft));
    page().locator("#endTime").fill(clock(soft));
    check("endGrade", grade);
    check("endCauses", "none_found");
    press("End the observation");
  }

  private void prepareForHome(String course) {
    page().navigate(course + "/before-home");
    String today = day(server.clock().instant());
    for (String item : List.of("TEACH_BACK", "SUPERVISED_INJECTION")) {
      page().locator("#" + item + "-day").fill(today);
      page().locator("form:has(#" + item + "-day) button").click();
    }
    page().locator("#EMERGENCY_PLAN-hospital").fill("Quellmoor Hospital (invented)");
    page().locator("#EMERGENCY_PLAN-afterHours").fill("555 0142");
    page().locator("#EMERGENCY_PLAN-transport").fill("His partner drives");
    page().locator("form:has(#EMERGENCY_PLAN-day) button").click();
    assertThat(answer()).hasText("Ready for home");
  }

  @Test
  void the_main_job_runs_from_an_empty_clinic_to_a_signed_next_dose() {
    StoryClock clock = server.clock();
    clock.goBack(Duration.ofDays(30));
    signIn(PRESCRIBER);
    assertThat(page().locator("main")).containsText("Do this first");
    browser.inspect("prescriber-today-empty");
    setUpTheClinic();
    browser.inspect("protocols");

    String course = nurseScreensAndReceivesTheVial();
    prescriberSignsTheFirstDose(course);
    nurseWatchesTheFirstInjection(course);
    prescriberSignsTheSecondDose(course);
    usefulDoseIsSignedForHome(course);
    reportsComeByTelephone(course);
    lateReportOfFourHoursStopsEverything();
    clock.comeHome();
  }

  private String nurseScreensAndReceivesTheVial() {
    press("Sign out");
    signIn(NURSE);
    openCourse("Anselm Birk", "NG-1041");
    String course = page().url();
    assertThat(answer()).hasText("Wait");
    browser.inspect("course-not-screened");
    screen(course);
    receiveVial(course);
    page().navigate(course);
    assertThat(answer()).hasText("Start: 0.12\u00a0mL");
    return course;
  }

  private void prescriberSignsTheFirstDose(String course) {
    signInLater(PRESCRIBER, Duration.ofDays(29), course);
    assertThat(page().locator(".dose .mark").first())
        .hasText("12-\u2060unit mark on a 1\u00a0mL U-\u2060100 syringe");
    assertThat(page().locator(".dose .content").first()).hasText("alprostadil 2.4\u00a0mcg");
    assertThat(page().locator(".dose.proposed")).containsText("Proposed, not signed");
    assertThat(page().getByLabel("Drawn syringe. Proposed, not signed.")).isVisible();
    browser.inspect("course-start");
    signProposed(Place.CLINIC);
  }

  private void nurseWatchesTheFirstInjection(String course) {
    signInLater(NURSE, Duration.ofDays(28), course);
    watchTheInjection(course, "1");
    page().navigate(course);
    assertThat(answer()).hasText("Increase: 0.25\u00a0mL");
    assertThat(page().locator("main")).containsText("Partial response: one step up.");
    assertThat(page().locator("main")).containsText("Not before");
    browser.inspect("course-step-up");
  }

  private void prescriberSignsTheSecondDose(String course) {
    signInLater(PRESCRIBER, Duration.ofDays(21), course);
    signProposed(Place.CLINIC);
    signInLater(NURSE, Duration.ofDays(20), course);
    watchTheInjection(course, "3");
    prepareForHome(course);
    browser.inspect("main-ready-for-home");
  }

  private void usefulDoseIsSignedForHome(String course) {
    signInLater(PRESCRIBER, Duration.ofDays(15), course);
    assertThat(answer()).hasText("Same dose: 0.25\u00a0mL");
    signProposed(Place.HOME);
    assertThat(page().locator("main")).containsText("Nothing on record stops him.");
    assertThat(page().locator(".dose.proposed")).hasCount(0);
    assertThat(page().getByLabel("Drawn syringe. The dose that is signed.")).isVisible();
    follow("Show the signed dose");
    assertThat(page().locator(".dose .volume")).hasText("0.25\u00a0mL");
    browser.inspect("order");
    follow("Back to the course");
  }

  private void reportsComeByTelephone(String course) {
    signInLater(NURSE, Duration.ofDays(8), course);
    report(Duration.ofHours(12), "25", "3", "exactly", "45");
    assertThat(answer()).hasText("Same dose: 0.25\u00a0mL");
    signInLater(NURSE, Duration.ofDays(5), course);
    report(Duration.ofHours(12), "25", "4", "from_61", "");
    assertThat(page().locator("main")).containsText("over an hour");
    browser.inspect("course-reported");
  }

  private void lateReportOfFourHoursStopsEverything() {
    report(Duration.ofHours(5), "25", "2", "exactly", "250");
    assertThat(answer()).hasText("Stop");
    assertThat(page().locator("main")).containsText("Suspended by a safety check.");
    browser.inspect("course-emergency");
    follow("Show the signed dose");
    assertThat(page().locator(".suspended")).containsText("do not use this dose");
    assertThat(page().locator("figure.drawn, .dose")).hasCount(0);
    browser.inspect("order-suspended");
    open("/");
    assertThat(page().locator("tbody tr").first()).containsText("Emergency over: review it");
    browser.inspect("today");
  }

  @Test
  void a_report_with_faults_keeps_what_was_typed_and_names_them_all() {
    signIn(PRESCRIBER);
    setUpTheClinic();
    openCourse("Corvin Adeyemi", "NG-1017");
    follow("Enter a report");
    page().locator("#time").fill("9 pm");
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
    browser.tabTo("group");
    browser.press("ArrowDown", "ArrowDown");
    browser.tabToWords("Open the course");
    browser.press("Enter");

    assertThat(page()).hasTitle("Dorian Velte - Northgate Clinic");
    assertThat(answer()).hasText("Wait");
    assertThat(page().locator(".taps, .signing")).hasCount(0);
  }
}
