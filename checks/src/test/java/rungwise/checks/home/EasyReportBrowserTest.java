package rungwise.checks.home;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.AtTheDesk;
import rungwise.checks.browser.TestServer;

/**
 * A man has called and all went well: what it takes from his name to the saved report. A press of
 * the mouse or a finger on a field counts, what is typed into it does not.
 */
class EasyReportBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final String MAN = "Corvin Adeyemi";

  private int taps;

  EasyReportBrowserTest() {
    super(TestServer.withStory());
  }

  private void tap(Locator what) {
    what.click();
    taps++;
  }

  private Locator option(String name, String value) {
    return page().locator("input[name='" + name + "'][value='" + value + "']");
  }

  private ZonedDateTime anHourAgo() {
    return server.clock().instant().minus(Duration.ofHours(1)).atZone(ZONE);
  }

  private String day() {
    boolean isToday =
        anHourAgo().toLocalDate().equals(server.clock().instant().atZone(ZONE).toLocalDate());
    return isToday ? "today" : "last_night";
  }

  private void find(String man) {
    signIn(NURSE);
    page().getByRole(AriaRole.SEARCHBOX).fill(man);
    page().keyboard().press("Enter");
    assertThat(page().locator("h1")).hasText("1 man was found.");
  }

  private void takeHisAnswers() {
    tap(page().locator("#identified"));
    tap(option("day", day()));
    tap(page().locator("#time"));
    page().keyboard().type(DateTimeFormatter.ofPattern("HHmm").format(anHourAgo()));
    tap(option("grade", "3"));
    assertThat(page().locator("#causes")).isHidden();
    tap(option("soft", "up_to_60"));
  }

  private void save() {
    tap(page().getByRole(AriaRole.BUTTON, named("Save the report")));
    assertThat(page().locator(".faults")).hasCount(0);
    assertThat(page().locator(".notice")).containsText("report");
  }

  @Test
  void an_easy_answer_takes_eight_taps_at_most() {
    find(MAN);
    tap(page().getByLabel("Report of " + MAN));
    assertThat(page().locator("#identified")).isFocused();
    takeHisAnswers();
    browser.inspect("report-easy");
    save();

    assertThat(taps).isLessThanOrEqualTo(8);
  }

  /** A second vial with another strength than the first. */
  private void receiveAnotherVial() {
    page().getByRole(AriaRole.LINK, named(MAN)).click();
    page().waitForURL("**/courses/*");
    page().navigate(page().url() + "/vial");
    page().locator("details:has(#new-lot) > summary").click();
    page().locator("#new-lot").fill("L-9002");
    page().locator("#new-strength-alprostadil").fill("5");
    page().locator("#new-beyondUse").fill(anHourAgo().toLocalDate().plusDays(30).toString());
    press("Save this vial");
    assertThat(page().locator(".notice")).containsText("vial");
  }

  @Test
  void with_two_labels_on_record_it_takes_nine() {
    find(MAN);
    receiveAnotherVial();
    press("Sign out");
    find(MAN);
    tap(page().getByLabel("Report of " + MAN));
    takeHisAnswers();
    tap(page().locator("input[name=vial]").first());
    save();

    assertThat(taps).isLessThanOrEqualTo(9);
  }

  @Test
  void by_keyboard_it_takes_fourteen_tab_stops_at_most() {
    find(MAN);
    page().getByLabel("Report of " + MAN).press("Enter");
    assertThat(page().locator("#identified")).isFocused();
    page().keyboard().press("Space");
    int stops = browser.tabTo("day");
    option("day", day()).press("Space");
    stops += browser.tabTo("time");
    page().keyboard().type(DateTimeFormatter.ofPattern("HHmm").format(anHourAgo()));
    stops += browser.tabTo("grade");
    option("grade", "3").press("Space");
    stops += browser.tabTo("soft");
    option("soft", "up_to_60").press("Space");
    stops += tabToSaving();
    page().keyboard().press("Enter");
    page().waitForURL("**/courses/*");

    assertThat(stops).isLessThanOrEqualTo(14);
  }

  private int tabToSaving() {
    for (int stops = 1; ; stops++) {
      page().keyboard().press("Tab");
      if ("Save the report".equals(page().evaluate("document.activeElement.innerText.trim()"))) {
        return stops;
      }
    }
  }

  @Test
  void what_may_have_been_wrong_is_asked_where_too_little_happened() {
    find(MAN);
    page().getByLabel("Report of " + MAN).click();
    option("grade", "2").check();
    assertThat(page().locator("#causes")).isVisible();
    option("causes", "one_found").check();
    option("grade", "4").check();

    assertThat(page().locator("#causes")).isVisible();
  }
}
