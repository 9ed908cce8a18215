package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** A clinic writes a protocol of its own, tries it and signs it. */
class ProtocolBrowserTest extends AtTheDesk {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final String SAMPLE = "us-vial-syringe-label version 1";

  ProtocolBrowserTest() {
    super(TestServer.withStory());
  }

  @BeforeEach
  void begin() {
    signIn(PRESCRIBER);
    open("/protocols/write?from=" + SAMPLE);
  }

  @Test
  void a_sample_becomes_the_clinics_own_protocol_and_then_its_next_version() {
    page().locator("#spacing_hours-value").fill("48");
    page().locator("#case-preparation").selectOption("alprostadil-20");
    page().locator("#case-barrel").selectOption("u100-1");
    page().locator("#case-group").selectOption("vasculogenic");
    page().locator("#case-grade-1").selectOption("2");
    page().locator("#case-minutes-1").fill("20");
    press("Check it");

    assertThat(page().locator("#checked")).containsText("It contradicts nothing.");
    assertThat(page().locator("#checked"))
        .containsText("Minimum interval: was 24\u00a0h, is 48\u00a0h.");
    assertThat(page().locator("#checked")).containsText("0.25\u00a0mL");
    browser.inspect("protocol-checked");
    press("Sign this protocol for use");

    assertThat(page()).hasURL(server.at("/protocols").toString());
    assertThat(page().locator("main")).containsText("as this clinic uses it, version 1");
    open("/protocols/write?from=our-us-vial-syringe-label version 1");
    press("Check it");
    assertThat(page().locator("#checked")).containsText("as this clinic uses it, version 2");
    assertThat(page().locator("#checked")).containsText("Nothing but the name.");
  }

  @Test
  void the_courses_that_run_on_a_protocol_are_on_a_page_of_their_own() {
    open("/protocols");
    browser.inspect("protocols");
    page().getByText("Show which").first().click();

    assertThat(page().locator("h1")).containsText("Courses that run on it now");
    browser.inspect("protocol-courses");
    page().locator("tbody a").first().click();
    assertThat(page()).hasURL(Pattern.compile(".*/courses/[0-9a-f-]{36}"));
  }

  @Test
  void what_a_protocol_may_say_beyond_the_least_is_written_in_the_form() {
    page().locator("#holds_from").fill("2031-01-01");
    page().locator("#component_limits-1-most").fill("60 mcg of alprostadil");
    page().locator("#component_limits-1-source").selectOption("assumption");
    page().locator("#component_limits-1-words").fill("as the maximum");
    page().locator("#emergency_plan-1-ask").fill("who stays with him that night");
    page().locator("#emergency_plan-1-source").selectOption("assumption");
    page().locator("#emergency_plan-1-words").fill("this clinic asks");
    page().locator("#readiness_months-value").fill("12");
    page().locator("#readiness_months-source").selectOption("assumption");
    page().locator("#readiness_months-words").fill("once a year");
    page().locator("#after_partial-responses").fill("2");
    page().locator("#after_partial-source").selectOption("assumption");
    page().locator("#after_partial-words").fill("this clinic asks twice");
    press("Check it");

    assertThat(page().locator("#checked")).containsText("holds from 1\u00a0January\u00a02031");
    assertThat(page().locator("#checked"))
        .containsText("New: Most of alprostadil in one injection");
    assertThat(page().locator("#checked")).containsText("who stays with him that night");
    assertThat(page().locator("#checked")).containsText("New: What was shown or agreed");
    assertThat(page().locator("#checked"))
        .containsText("New: Partial responses in a row at the same dose before a step up, 2.");
    browser.inspect("protocol-with-more");
    press("Sign this protocol for use");

    assertThat(page().locator("main")).containsText("it holds from 1\u00a0January\u00a02031");
    open("/courses/new");
    assertThat(page().locator("#protocol")).not().containsText("as this clinic uses it");
  }

  @Test
  void every_contradiction_is_said_at_once_and_what_was_typed_stays() {
    page().locator("#start-mixed-dose").fill("80 mcg of alprostadil");
    page().locator("#steps-1-add").fill("0 mcg of alprostadil");
    page().locator("#spacing_hours-value").fill("none");
    page().locator("#ceiling-source").selectOption("");
    press("Check it");

    assertThat(page().getByRole(AriaRole.ALERT).locator("li")).hasCount(3);
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("spacing_hours");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("ceiling");
    assertThat(page().locator("#start-mixed-dose")).hasValue("80 mcg of alprostadil");
    browser.inspect("protocol-faults");

    page().locator("#spacing_hours-value").fill("24");
    page().locator("#ceiling-source").selectOption("assumption");
    page().locator("#steps-1-add").fill("30 mcg of alprostadil");
    page().locator("#ceiling-words").fill("this clinic goes no further");
    press("Check it");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("above the ceiling");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("more than add_at_most");
  }
}
