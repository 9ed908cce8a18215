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
    page().getByRole(AriaRole.LINK, named(man)).first().click();
    return page().url();
  }

  private Locator corrections() {
    return page().locator("section", containing("Corrections to confirm")).last();
  }

  @Test
  void a_contradicting_correction_waits_for_a_prescriber_who_sees_both_entries() {
    signIn(NURSE);
    String course = courseOf("Dorian Velte");
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
}
