package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;

/** Somebody looks for a man while he is on the telephone. */
class FindBrowserTest extends AtTheDesk {

  FindBrowserTest() {
    super(TestServer.withStory());
  }

  @Test
  void a_man_is_found_from_any_page_by_the_keyboard_alone() {
    signIn(DemoClinic.MEMBERS.get(1));
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
