package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** Somebody looks for a man, and an auditor finds out who has seen him. */
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

    assertThat(page()).hasTitle("Who has seen this course: Corvin Adeyemi - Northgate Clinic");
    assertThat(page().locator("tbody tr")).hasCount(4);
    assertThat(page().locator("tbody tr").nth(0)).containsText("the list of record numbers");
    assertThat(page().locator("tbody tr").nth(1)).containsText("Refused:");
    assertThat(page().locator("tbody tr").nth(2)).containsText("Tobias Wren");
    assertThat(page().locator("tbody tr").nth(3)).containsText("the day's list");
    browser.inspect("views");
  }

  @Test
  void a_man_is_found_from_any_page_by_the_keyboard_alone() {
    signIn(PRESCRIBER);
    browser.inspect("today-with-search");
    open("/protocols");

    browser.tabTo("find-man");
    browser.type("ADEYEMI corv");
    browser.press("Enter");

    assertThat(answer()).hasText("1 man was found.");
    assertThat(page().getByRole(AriaRole.LINK, named("Corvin Adeyemi"))).hasCount(1);
    assertThat(main()).containsText("2 November 1957");
    assertThat(main()).containsText("HL-1017");
    browser.inspect("found");

    browser.tabTo("find-man");
    browser.type("1957-11-02");
    browser.press("Enter");
    assertThat(answer()).hasText("1 man was found.");

    browser.tabTo("find-man");
    browser.type("nobody of this name");
    browser.press("Enter");
    assertThat(answer()).containsText("Nobody was found.");
    browser.inspect("found-nobody");
  }
}
