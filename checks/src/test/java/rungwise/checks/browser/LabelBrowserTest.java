package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/**
 * A man who changed from 20 to 40 mcg/mL still has a vial of each. What he injected is what the
 * label says: 0.5 mL hold 10 mcg of the one and 20 mcg of the other.
 */
class LabelBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final String PLANNED = "alprostadil 40 mcg per mL";
  private static final String OTHER = "alprostadil 20 mcg per mL";

  LabelBrowserTest() {
    super(TestServer.withStory());
  }

  private String course() {
    signIn(NURSE);
    open("/");
    page().getByRole(AriaRole.LINK, named("Leander Voss")).first().click();
    return page().url();
  }

  private Instant hoursAgo(int hours) {
    return server.clock().instant().minus(Duration.ofHours(hours));
  }

  private static String clock(Instant at) {
    return DateTimeFormatter.ofPattern("HH:mm").format(at.atZone(ZONE));
  }

  private static String day(Instant at) {
    return at.atZone(ZONE).toLocalDate().toString();
  }

  private void report(int hoursAgo, String minutes) {
    Instant at = hoursAgo(hoursAgo);
    follow("Enter a report");
    page().locator("input[name=identified]").check();
    check("day", "other");
    page().locator("#date").fill(day(at));
    page().locator("#time").fill(clock(at));
    page().locator("#mark").fill("50");
    check("grade", "2");
    check("soft", "exactly");
    page().locator("#exactMinutes").fill(minutes);
    check("causes", "none_found");
  }

  @Test
  void a_report_is_asked_for_its_vial_and_kept_as_what_the_label_says() {
    String course = course();
    report(30, "25");
    browser.inspect("report-which-vial");
    press("Save the report");
    assertThat(main()).containsText("the labels of his vials differ: " + OTHER + "; " + PLANNED);
    browser.inspect("report-vial-missing");
    page().getByLabel(OTHER).check();
    press("Save the report");

    assertThat(main()).containsText("The label of the vial says " + OTHER);
    assertThat(main()).containsText("and planned was " + PLANNED);
    browser.inspect("course-other-label");
    page().navigate(course + "/injections");
    assertThat(main()).containsText("0.5 mL of " + OTHER + ": alprostadil 10 mcg");

    page().navigate(course);
    report(4, "150");
    page().getByLabel("not known which").check();
    press("Save the report");
    browser.inspect("course-vial-not-known");
    page().navigate(course + "/injections");
    assertThat(main()).containsText("the vial is not known, it may have been 0.5 mL of " + OTHER);
  }

  @Test
  void a_visit_asks_which_vial_before_the_needle() {
    String course = course();
    page().navigate(course + "/visit");
    page().locator("summary", containing("injected")).last().click();
    page().locator("#startDate").fill(day(hoursAgo(0)));
    page().locator("#startTime").fill(clock(hoursAgo(0)));
    page().locator("#startMark").fill("12");
    press("He was injected");
    assertThat(main()).containsText("Say from which vial it is drawn");
    browser.inspect("visit-which-vial");

    page().getByLabel(OTHER).check();
    page().locator("input[name=startGiven]").check();
    press("He was injected");
    assertThat(main()).containsText("The label decides: recorded as 0.12 mL of " + OTHER);
    browser.inspect("visit-other-label");
  }
}
