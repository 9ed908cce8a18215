package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** What a corrected report goes on closing, and what a prescriber writes to lift it. */
class LiftingBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");

  LiftingBrowserTest() {
    super(TestServer.withStory());
  }

  private String courseOf(String man) {
    open("/");
    follow(man);
    page().waitForURL("**/courses/**");
    return page().url();
  }

  private Locator corrections() {
    return page().locator("section", containing("Corrections to confirm")).last();
  }

  @Test
  void a_contradicting_correction_waits_for_a_prescriber_who_sees_both_entries() {
    signIn(NURSE);
    String course = courseOf("Dorian Velte");
    follow("Injections");
    page().getByRole(AriaRole.LINK, named("Correct")).first().click();
    page().locator("summary", containing("belongs to somebody else")).click();
    page().locator("#withdrawReason").fill("entered for the wrong man");
    press("Withdraw this report");
    page().navigate(course);
    assertThat(corrections()).containsText("soft after 2 h 30 min");
    assertThat(corrections().locator("button")).hasCount(0);
    browser.inspect("correction-nurse");

    press("Sign out");
    signIn(PRESCRIBER);
    page().navigate(course);
    assertThat(corrections()).containsText("Report withdrawn");
    assertThat(corrections()).containsText("Its dose and all above it stay closed.");
    browser.inspect("correction-prescriber");
    corrections().locator("#confirmReason").fill("The report was another man's.");
    press("Confirm that the first report was wrong");

    assertThat(main()).containsText("The correction is confirmed");
    assertThat(corrections()).hasCount(0);
  }

  @Test
  void an_emergency_without_an_end_is_reviewed_with_when_he_was_seen_soft() {
    signIn(PRESCRIBER);
    courseOf("Emeric Sand");
    Locator review = page().locator("#review");
    assertThat(review).containsText("How it ended is not on record.");
    browser.inspect("review-without-end");
    review.locator("#reviewReason").fill("He came in this morning: no pain, no harm.");
    press("Write down the review");
    assertThat(page().locator(".faults")).containsText("How it ended is not on record");
    assertThat(page().locator("#reviewReason"))
        .hasValue("He came in this morning: no pain, no harm.");

    ZonedDateTime soft = server.clock().instant().atZone(ZONE).minusMinutes(5);
    page().locator("#softDate").fill(soft.toLocalDate().toString());
    page().locator("#softTime").fill(DateTimeFormatter.ofPattern("HH:mm").format(soft));
    press("Write down the review");

    assertThat(main()).containsText("The review is on record.");
    assertThat(page().locator("#review")).hasCount(0);
    browser.inspect("review-written");
  }

  /** Two days ago, at the dose that he had in the clinic before. */
  private void reportThatLasted(String minutes) {
    ZonedDateTime at = server.clock().instant().atZone(ZONE).minusDays(2);
    page().getByRole(AriaRole.LINK, named("Enter a report")).click();
    page().locator("input[name=identified]").check();
    check("day", "other");
    page().locator("#date").fill(at.toLocalDate().toString());
    page().locator("#time").fill(DateTimeFormatter.ofPattern("HH:mm").format(at));
    page().locator("#mark").fill("25");
    check("grade", "3");
    check("soft", "exactly");
    page().locator("#exactMinutes").fill(minutes);
    press("Save the report");
  }

  @Test
  void a_signer_accepts_75_minutes_up_to_90_with_a_reason_and_only_after_such_a_report() {
    signIn(PRESCRIBER);
    courseOf("Anselm Birk");
    assertThat(page().locator(".signing")).hasCount(1);
    assertThat(page().locator("#accepted")).hasCount(0);

    reportThatLasted("75");
    page().locator(".signing summary").click();
    check("volume", "250");
    page().locator("#changed").selectOption("PATIENT_WISH");
    page().getByLabel("over an hour").first().check();
    page().locator("#accepted").fill("120");
    press("Sign this dose");
    assertThat(page().locator(".faults")).containsText("from 61 to 119 can");
    assertThat(page().locator(".faults")).containsText("Write the reason");
    assertThat(page().locator("#accepted")).hasValue("120");
    browser.inspect("accept-refused");

    page().locator("#accepted").fill("90");
    page().locator("#signReason").fill("He is content and knows what to do after 2 hours.");
    press("Sign this dose");

    assertThat(page().locator(".notice")).containsText("The dose is signed.");
    assertThat(main()).containsText("At this dose up to 1\u00a0h 30\u00a0min is accepted.");
    assertThat(page().locator("#accepted")).hasCount(0);
    browser.inspect("accepted");
  }
}
