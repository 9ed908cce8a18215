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

/** A report that is kept as it was told, and that a prescriber is to look at. */
class FlaggedBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final String MAN = "Anselm Birk";

  FlaggedBrowserTest() {
    super(TestServer.withStory());
  }

  private void report(ZonedDateTime at) {
    page().getByRole(AriaRole.LINK, named("Enter a report")).click();
    page().locator("input[name=identified]").check();
    check("day", "other");
    page().locator("#date").fill(at.toLocalDate().toString());
    page().locator("#time").fill(DateTimeFormatter.ofPattern("HH:mm").format(at));
    page().locator("#mark").fill("25");
    check("grade", "3");
    check("soft", "exactly");
    page().locator("#exactMinutes").fill("40");
    press("Save the report");
  }

  private Locator flagged() {
    return page().locator("section", containing("Flagged reports")).last();
  }

  private Locator row() {
    return page().locator("tr", containing(MAN));
  }

  @Test
  void an_injection_too_soon_is_kept_and_stays_on_today_until_a_prescriber_has_seen_it() {
    ZonedDateTime first = server.clock().instant().atZone(ZONE).minusDays(2);
    signIn(NURSE);
    open("/");
    page().getByRole(AriaRole.LINK, named(MAN)).first().click();
    String course = page().url();
    report(first);
    report(first.plusHours(10));
    assertThat(page().locator(".notice")).containsText("A prescriber is told of it");
    assertThat(flagged()).containsText("It was too soon after the one before.");
    assertThat(flagged().locator("button")).hasCount(0);
    browser.inspect("flagged-nurse");
    open("/");
    assertThat(row()).containsText("Flagged report for a prescriber");
    browser.inspect("flagged-today");

    press("Sign out");
    signIn(PRESCRIBER);
    page().navigate(course);
    browser.inspect("flagged-prescriber");
    flagged().locator("#seenWords").fill("I called him: he waits for 24 hours from now on.");
    press("I have seen these reports");

    assertThat(page().locator(".notice")).containsText("marked as seen by you");
    assertThat(flagged()).hasCount(0);
    open("/");
    assertThat(row()).not().containsText("Flagged");
  }
}
