package rungwise.checks.call;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;
import rungwise.clinic.people.Role;

/** The rescue of a man on record: given doses are counted, and the next one waits. */
@Tag("browser")
class CourseRescueBrowserTest {

  private static final TestServer server = TestServer.withStory();
  private final Browser browser = Browser.open();

  @AfterAll
  static void stop() {
    server.close();
  }

  @AfterEach
  void close() {
    browser.close();
  }

  private Page page() {
    return browser.page();
  }

  private void signIn() {
    Member member =
        DemoClinic.MEMBERS.stream()
            .filter(one -> one.roles().contains(Role.PRESCRIBER))
            .findFirst()
            .orElseThrow();
    page().navigate(server.at("/sign-in").toString());
    page().getByLabel("Sign-in name").fill(member.signInName());
    page().getByLabel("Password").fill(member.password());
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in").setExact(true))
        .click();
    assertThat(page()).hasTitle("Today - Northgate Clinic");
  }

  private void fill(String field, String text) {
    page().locator("#" + field).fill(text);
  }

  private void press(String words) {
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(words).setExact(true))
        .click();
  }

  private Locator main() {
    return page().locator("main");
  }

  private void openRescue() {
    page().locator("table.day a.call-way").last().click();
    page().waitForURL("**/call");
    press("Nobody knows since when");
    page().waitForURL("**/call");
    page().getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("his rescue")).click();
    page().waitForURL("**/call/rescue");
  }

  @Test
  void what_is_given_is_counted_and_the_next_dose_waits_and_is_held() {
    signIn();
    openRescue();
    assertThat(main()).containsText("raises blood pressure");
    assertThat(main()).containsText("No dose is on record");
    browser.inspect("rescue-empty");

    fill("dose", "200 mcg");
    fill("volume", "2 mL");
    fill("strength", "1 mg/mL");
    press("It was given: write it down");
    assertThat(main()).containsText("hold 2,000 mcg, and 200 mcg was typed");
    fill("strength", "100 mcg/mL");
    fill("second", "a second reader");
    press("It was given: write it down");
    assertThat(main()).containsText("It is written down.");
    assertThat(main()).containsText("200 mcg in the last hour");
    assertThat(main()).containsText("2 mL of 100 mcg/mL, 200 mcg");

    fill("dose", "200 mcg");
    press("May this dose be prepared now?");
    assertThat(main()).containsText("wait until 3 min have passed");

    fill("dose", "900 mcg");
    press("It was given: write it down");
    assertThat(main()).containsText("two halves are one dose");
    assertThat(main()).containsText("in the hour up to it, above 1,000 mcg");
    browser.inspect("rescue-flagged");
  }

  @Test
  void a_gas_that_mixes_is_treated_as_ischaemic_and_a_wrong_entry_is_struck() {
    signIn();
    openRescue();
    fill("oxygen", "25 mmHg");
    fill("carbon-dioxide", "65 mmHg");
    fill("ph", "7.3");
    press("Write it down and read it");
    assertThat(main()).containsText("treat as ischaemic until excluded; two of three criteria met");

    page().locator("summary", new Page.LocatorOptions().setHasText("strike it")).click();
    page().locator("input[name=entry]").first().check();
    page().locator("#strike-reason").fill("another man's report");
    press("Strike it");
    assertThat(main()).containsText("It is written down.");
    assertThat(page().locator("main s")).containsText("Blood gas");
    assertThat(main()).containsText("another man's report");

    page().navigate(page().url().replace("/rescue", "/letter"));
    assertThat(main()).containsText("It has lasted: not known: read it as 4 hours or more");
    assertThat(main()).containsText("Whether any was given elsewhere is not known");
    assertThat(main()).containsText("phentolamine");
    assertThat(main()).containsText("Nobody can say when it began");
    assertThat(main()).containsText("Struck, it does not count: Blood gas");
    browser.inspect("call-letter");
    page().navigate(page().url().replace("/letter", "/rescue"));

    fill("dose", "200 mcg");
    press("May this dose be prepared now?");
    assertThat(main()).containsText("This dose is held");
    assertThat(main()).containsText("No second person has read label and dilution.");
    browser.inspect("rescue-held");
    page().locator("#reason").fill("alone on the way");
    press("May this dose be prepared now?");
    assertThat(main()).containsText("It may be prepared");
    assertThat(main()).containsText("went on: no blood pressure since the last dose");
  }
}
