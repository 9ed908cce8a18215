package rungwise.checks.call;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;
import rungwise.clinic.people.Role;

/** What the clinic keeps for calls: signed, listed, shown in a call and printed. */
@Tag("browser")
class CallBookBrowserTest {

  private final TestServer server = TestServer.withStory();
  private final Browser browser = Browser.open();

  @AfterEach
  void close() {
    browser.close();
    server.close();
  }

  private Page page() {
    return browser.page();
  }

  private void signIn(Role role) {
    Member member =
        DemoClinic.MEMBERS.stream()
            .filter(one -> one.roles().contains(role))
            .findFirst()
            .orElseThrow();
    page().navigate(server.at("/sign-in").toString());
    page().getByLabel("Sign-in name").fill(member.signInName());
    page().getByLabel("Password").fill(member.password());
    press("Sign in");
    assertThat(page()).hasTitle("Today - Northgate Clinic");
  }

  private void press(String words) {
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(words).setExact(true))
        .first()
        .click();
  }

  private Locator main() {
    return page().locator("main");
  }

  @Test
  void a_signed_protocol_and_the_departments_stand_on_the_call_and_on_paper() {
    signIn(Role.ADMINISTRATOR);
    page().navigate(server.at("/call-book").toString());
    page().locator("summary", new Page.LocatorOptions().setHasText("Add one")).click();
    page().locator("#name").fill("Sample Hospital");
    page().locator("#town").fill("Sampletown");
    page().locator("#telephone").fill("555 0100");
    page().locator("#can").fill("urology day and night");
    press("Keep it");
    assertThat(main()).containsText("Sample Hospital is on the list.");
    browser.inspect("call-book");
    press("Sign out");

    signIn(Role.PRESCRIBER);
    page().navigate(server.at("/call-book").toString());
    assertThat(main()).containsText("Sample: not signed by this clinic");
    page().locator("#number").fill("555 0177");
    press("Sign this version");
    assertThat(main()).containsText("Version 1 is signed.");
    browser.inspect("call-book-signed");

    page().locator("a", new Page.LocatorOptions().setHasText("Open the page to print")).click();
    page().waitForURL("**/print");
    assertThat(main()).containsText("555 0177");
    assertThat(main()).containsText("Sample Hospital");
    browser.inspect("call-book-print");
    page().locator("form.not-printed button").click();
    assertThat(main()).containsText("It is written down that you printed edition");

    page().navigate(server.at("/").toString());
    page().locator("table.day a.call-way").last().click();
    page().waitForURL("**/call");
    press("Nobody knows since when");
    assertThat(main()).containsText("Version 1 of the clinic's protocol.");
    assertThat(page().locator("main .steps").getByText("He walks about")).isHidden();
    assertThat(main()).containsText("Sample Hospital");
    press("He says so");
    assertThat(main()).containsText("said by he: He goes to the nearest emergency department now");
  }
}
