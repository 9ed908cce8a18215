package rungwise.checks.call;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Clock;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;

/** The call with nobody's record opened, in a browser, also with the server gone. */
@Tag("browser")
class CallBrowserTest {

  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final Duration FOUR_HOURS = Duration.ofHours(4);

  private final TestServer server =
      TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people()));
  private final Browser browser = Browser.open();
  private boolean isGone;

  @AfterEach
  void close() {
    browser.close();
    killServer();
  }

  private void killServer() {
    if (!isGone) {
      isGone = true;
      server.close();
    }
  }

  private Page page() {
    return browser.page();
  }

  private void open(String path) {
    page().navigate(server.at(path).toString());
  }

  /** Opens the page in a browser whose clock the test moves. */
  private Instant openByClock() {
    Instant now = InstantSource.system().instant();
    page().clock().install(new Clock.InstallOptions().setTime(now.toEpochMilli()));
    open("/call");
    return now;
  }

  /** Types a start, as two answers: the day where it is not today, and the time. */
  private void began(Page page, Instant start, Instant now) {
    ZonedDateTime at = start.atZone(ZONE);
    if (!at.toLocalDate().equals(now.atZone(ZONE).toLocalDate())) {
      page.locator("input[name=day][value=yesterday]").first().check();
    }
    page.locator("#time").fill(CLOCK.format(at));
  }

  private Locator instruction(String view) {
    return page().locator("article[data-view=" + view + "]");
  }

  @Test
  void it_opens_in_one_step_from_pages_that_nobody_is_signed_in_for() {
    for (String path : List.of("/sign-in", "/welcome", "/no-such-page")) {
      open(path);

      page().getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Long erection")).click();

      assertThat(page()).hasTitle("Long erection - Northgate Clinic");
      assertThat(instruction("nothing-said")).isVisible();
      assertThat(instruction("nothing-said")).containsText("emergency department now");
    }
    browser.inspect("call");
  }

  @Test
  void the_first_instruction_is_there_after_one_answer_and_nothing_is_sent() {
    Instant now = openByClock();
    var sent = new ArrayList<String>();
    page().onRequest(request -> sent.add(request.url()));

    began(page(), now.minus(Duration.ofMinutes(150)), now);

    assertThat(instruction("long")).isVisible();
    assertThat(instruction("long")).containsText("2 h 30 min since");
    assertThat(instruction("long")).containsText("He sets out");
    assertThat(instruction("nothing-said")).isHidden();
    assertThat(sent).allMatch(url -> url.equals(server.at("/assets/icon.svg").toString()));
    browser.inspect("call-long");
  }

  @Test
  void with_the_server_dead_the_clock_runs_and_four_hours_show_within_a_second() {
    Instant now = openByClock();
    killServer();

    began(page(), now.minus(FOUR_HOURS.minusMinutes(2)), now);
    assertThat(instruction("long")).isVisible();
    assertThat(page().getByText("hold a cold pack")).not().hasCount(0);

    page().clock().fastForward(Duration.ofMinutes(2).toMillis());
    page().clock().runFor(Duration.ofSeconds(1).toMillis());

    assertThat(instruction("emergency")).isVisible();
    assertThat(instruction("emergency")).containsText("Emergency department now");
    assertThat(page().locator("article:visible >> text=cold pack")).hasCount(0);
  }

  @Test
  void a_clock_that_is_set_back_never_makes_it_calm_again() {
    Instant now = openByClock();
    began(page(), now.minus(FOUR_HOURS), now);
    assertThat(instruction("emergency")).isVisible();

    page().clock().setSystemTime(now.minus(Duration.ofHours(3)).toEpochMilli());
    page().clock().runFor(Duration.ofSeconds(2).toMillis());

    assertThat(instruction("emergency")).isVisible();
    assertThat(instruction("emergency")).containsText("4 h");
  }

  @Test
  void it_counts_from_the_earliest_of_all_starts_until_one_is_struck_and_shows_that_still() {
    Instant now = openByClock();
    Instant early = now.minus(FOUR_HOURS.plusMinutes(30));
    Instant late = now.minus(Duration.ofMinutes(30));
    began(page(), early, now);
    page().keyboard().press("Tab");
    page().getByText("Today").last().click();
    began(page(), late, now);
    page().keyboard().press("Tab");

    assertThat(instruction("emergency")).isVisible();

    page()
        .getByRole(AriaRole.BUTTON)
        .filter(new Locator.FilterOptions().setHasText(CLOCK.format(early.atZone(ZONE))))
        .click();
    assertThat(instruction("early")).isVisible();
    assertThat(page().locator("#said-starts s")).containsText(CLOCK.format(early.atZone(ZONE)));
  }

  @Test
  void who_does_not_know_since_when_is_sent_at_once_and_soft_after_it_is_still_examined() {
    openByClock();

    page().locator("#not-known").click();
    assertThat(instruction("emergency")).isVisible();
    assertThat(instruction("emergency"))
        .containsText("Nobody can say that it is less than 4 hours");
    browser.inspect("call-emergency");

    page().getByText("No, fully soft").click();
    assertThat(instruction("soft-late")).isVisible();
    browser.inspect("call-soft-late");
  }

  @Test
  void it_outlives_a_reload_of_the_page() {
    Instant now = openByClock();
    began(page(), now.minus(Duration.ofMinutes(130)), now);
    page().keyboard().press("Tab");

    page().reload();

    assertThat(instruction("long")).isVisible();
    assertThat(page().url()).doesNotContain("?");
  }

  @Test
  void with_the_server_dead_given_doses_are_kept_in_the_page_counted_and_flagged() {
    openByClock();
    killServer();
    page().locator("#rescue-dose").fill("300 mcg");
    page().locator("#rescue-side").selectOption("each");
    page().locator("#rescue-second").check();
    page().locator("#rescue-write").click();
    assertThat(page().locator("#rescue-side")).hasValue("side not known");
    assertThat(page().locator("#rescue-second")).not().isChecked();

    Locator log = page().locator("#rescue-log");
    assertThat(page().locator("#rescue-lines li")).hasCount(2);
    assertThat(log).containsText("In the last hour 600 mcg");
    assertThat(log).containsText("together 600 mcg at once: two halves are one dose");
    assertThat(log).containsText("Not before");
    page().locator("#rescue-dose").fill("0.2 mg");
    page().locator("#rescue-write").click();
    assertThat(page().locator("#rescue-fault")).containsText("Write whole micrograms");
    page().locator("#rescue-dose").fill("900");
    page().locator("#rescue-write").click();
    assertThat(log).containsText("1500 mcg in the hour up to it, above 1000 mcg");

    page().clock().fastForward(Duration.ofMinutes(3).toMillis());
    page().clock().runFor(Duration.ofSeconds(2).toMillis());
    assertThat(log).containsText("The shortest interval has passed");
  }

  @Test
  void given_doses_outlive_a_reload_and_a_struck_one_stays_to_be_read() {
    openByClock();
    page().locator("#rescue-dose").fill("200");
    page().locator("#rescue-write").click();
    browser.inspect("call-rescue-log");
    page().reload();
    page().locator("#rescue-lines button").click();

    assertThat(page().locator("#rescue-lines s")).containsText("phenylephrine 200 mcg");
    assertThat(page().locator("#rescue-next")).hasText("");
  }

  @Test
  void without_script_a_plain_form_with_the_start_answers() {
    try (Browser plain = Browser.withoutScript()) {
      Page page = plain.page();
      page.navigate(server.at("/call").toString());
      Instant now = server.clock().instant();
      began(page, now.minus(FOUR_HOURS.plusMinutes(1)), now);
      page.getByText("Show what to do").click();

      Locator emergency = page.locator("article[data-view=emergency]");
      assertThat(emergency).isVisible();
      assertThat(emergency).containsText("4 h 1 min since");
      assertThat(page.getByText("does not count on by itself")).isVisible();

      page.locator("#time").fill("7:50");
      page.getByText("Show what to do").click();
      assertThat(page.getByRole(AriaRole.ALERT).first()).containsText("may be morning or evening");
      assertThat(page.locator("article[data-view=nothing-said]")).isVisible();
    }
  }
}
