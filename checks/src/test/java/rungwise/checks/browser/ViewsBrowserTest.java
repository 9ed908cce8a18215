package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** An auditor finds out who has seen a man. */
class ViewsBrowserTest extends AtTheDesk {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member AUDITOR = DemoClinic.MEMBERS.getLast();

  ViewsBrowserTest() {
    super(TestServer.withStory());
  }

  @Test
  void an_auditor_reads_who_has_seen_a_course_and_a_refused_look_of_his_own() {
    signIn(PRESCRIBER);
    follow("Corvin Adeyemi");
    String course = page().url();
    press("Sign out");
    signIn(AUDITOR);
    page().navigate(course);
    follow("Go to Today");

    follow("Who looked");
    assertThat(page().locator("main")).not().containsText("Adeyemi");
    browser.inspect("record-numbers");
    follow("HL-1017");

    assertThat(page()).hasTitle("Who has seen this course - Northgate Clinic");
    assertThat(page().locator("tbody tr")).hasCount(4);
    assertThat(page().locator("tbody tr").nth(0)).containsText("the list of record numbers");
    assertThat(page().locator("tbody tr").nth(1)).containsText("Refused:");
    assertThat(page().locator("tbody tr").nth(2)).containsText("Tobias Wren");
    assertThat(page().locator("tbody tr").nth(3)).containsText("the day's list");
    browser.inspect("views");
  }
}
