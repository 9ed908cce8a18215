package rungwise.checks.call;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.WaitUntilState;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;
import rungwise.clinic.people.Role;

/** The call of a man on record: how many answers it takes, and that it holds until it is closed. */
@Tag("browser")
class CourseCallBrowserTest {

  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** From the line to the first instruction. */
  private static final int MOST_OF_A_KNOWN_MAN = 3;

  private static final int MOST_OF_AN_UNKNOWN_MAN = 2;

  private static final TestServer server = TestServer.withStory();
  private final Browser browser = Browser.open();
  private int inputs;

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

  private void signIn(Role role) {
    Member member =
        DemoClinic.MEMBERS.stream()
            .filter(one -> one.roles().contains(role))
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

  private void tap(Locator what) {
    inputs++;
    what.click();
  }

  private void began(Duration ago) {
    Instant start = server.clock().instant().minus(ago);
    ZonedDateTime at = start.atZone(ZONE);
    if (!at.toLocalDate().equals(server.clock().instant().atZone(ZONE).toLocalDate())) {
      page().locator("input[name=day][value=yesterday]").first().check();
    }
    inputs++;
    page().locator("#time").fill(CLOCK.format(at));
  }

  private Locator instruction(String view) {
    return page().locator("article[data-view=" + view + "]");
  }

  @Test
  void an_unknown_man_takes_two_inputs_at_most() {
    page().navigate(server.at("/call").toString());
    assertThat(instruction("nothing-said")).containsText("emergency department now");
    assertThat(inputs).isZero();

    began(Duration.ofMinutes(150));

    assertThat(instruction("long")).isVisible();
    assertThat(inputs).isLessThanOrEqualTo(MOST_OF_AN_UNKNOWN_MAN);
  }

  @Test
  void a_time_that_is_typed_before_the_script_has_come_counts() {
    List<Route> held = new ArrayList<>();
    page().route("**/assets/call*", held::add);
    page()
        .navigate(
            server.at("/call").toString(),
            new Page.NavigateOptions().setWaitUntil(WaitUntilState.COMMIT));
    began(Duration.ofMinutes(150));
    assertThat(instruction("long")).isHidden();

    held.getFirst().resume();

    assertThat(instruction("long")).isVisible();
  }

  @Test
  void a_known_man_takes_three_inputs_at_most_with_access_on_call() {
    signIn(Role.ON_CALL_CLINICIAN);

    tap(page().locator("table.day a.call-way").first());
    assertThat(instruction("nothing-said")).containsText("emergency department now");
    browser.inspect("call-access");
    tap(page().getByText("His erection is not going down: open his record"));
    began(Duration.ofMinutes(150));

    assertThat(instruction("long")).isVisible();
    assertThat(inputs).isLessThanOrEqualTo(MOST_OF_A_KNOWN_MAN);
    assertThat(instruction("long").getByText("hold a cold pack")).isVisible();
    browser.inspect("call-known");

    began(Duration.ofMinutes(241));
    assertThat(instruction("emergency")).isVisible();
    assertThat(page().locator("text=cold pack >> visible=true")).hasCount(0);
  }

  @Test
  void an_open_call_stands_first_on_today_and_nothing_says_the_same_dose_until_it_is_closed() {
    signIn(Role.PRESCRIBER);
    page().locator("table.day a.call-way").last().click();
    page().waitForURL("**/call");
    String call = page().url();
    String man = page().locator("h1").innerText().replace("Long erection: ", "");
    began(Duration.ofMinutes(245));
    page().getByText("Write down that it began then").click();

    assertThat(instruction("emergency")).isVisible();
    browser.inspect("call-open");
    page().getByText("Still firm now").click();
    page().getByText("Done now").first().click();
    assertThat(page().getByText("Written in this call")).isVisible();

    page().navigate(server.at("/").toString());
    assertThat(page().locator(".all-not-over")).containsText(man);
    page().navigate(call.replace("/call", ""));
    for (String calm : new String[] {"Same dose", "Nothing on record stops"}) {
      assertThat(page().locator("body")).not().containsText(calm);
    }

    page().navigate(call);
    page().getByLabel("Where he is").fill(" ");
    page().getByLabel("Who has taken him over").fill(" ");
    page().getByText("He is in their care").click();
    assertThat(page().getByRole(AriaRole.ALERT).filter(words("Please check"))).isVisible();
    browser.inspect("call-refused");
    page().getByLabel("Where he is").fill("Sample Hospital");
    page().getByLabel("Who has taken him over").fill("the doctor on duty");
    page().getByText("He is in their care").click();

    assertThat(page().getByText("Every dose waits until a prescriber has reviewed it")).isVisible();
  }

  private static Locator.FilterOptions words(String text) {
    return new Locator.FilterOptions().setHasText(text);
  }
}
