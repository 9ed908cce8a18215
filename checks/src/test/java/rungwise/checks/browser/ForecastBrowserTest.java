package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** The programme lead signs a population, courses get forecasts, and a limit holds a step. */
class ForecastBrowserTest extends AtTheDesk {

  private static final Member LEAD = DemoClinic.MEMBERS.get(1);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final String SAMPLE = "us-vial-syringe-label version 1";
  private static final String CAVEAT = "Calibrated to published summaries, not to this clinic.";

  ForecastBrowserTest() {
    super(TestServer.withStory());
  }

  private static final String FORECAST = "/forecast";

  @BeforeEach
  void begin() {
    signIn(LEAD);
  }

  private String course(String number) {
    return "/courses/" + server.clinic().coursesOf(number).getFirst().id();
  }

  private Locator forecast() {
    return page().locator("section[aria-labelledby=forecast]");
  }

  private void withdrawWhatTheDemoSigned() {
    open("/populations");
    page().locator("summary").first().click();
    page().getByLabel("Why it is withdrawn").fill("to be signed again");
    press("Withdraw it");
    assertThat(page().locator("main")).containsText("Withdrawn by Tobias Wren");
  }

  private void signTheShippedPopulation() {
    open("/populations");
    browser.inspect("populations");
    follow("alprostadil-published");
    assertThat(page().locator(".answer")).hasText(CAVEAT);
    browser.inspect("population-look");
    page().locator("input[name=preparations][value='alprostadil-20']").check();
    press("Sign this population for use");
    assertThat(page().locator("main")).containsText("In use for Alprostadil 20.");
    browser.inspect("populations-signed");
  }

  private void report(String path) {
    Instant at = server.clock().instant().minus(Duration.ofDays(2));
    open(path);
    follow("Enter a report");
    page().locator("input[name=identified]").check();
    check("day", "other");
    page().getByLabel("Date of the injection").fill(at.atZone(ZONE).toLocalDate().toString());
    page()
        .getByLabel("Time of day, hours and minutes")
        .fill(DateTimeFormatter.ofPattern("HH:mm").format(at.atZone(ZONE)));
    page().locator("#mark").fill("25");
    page().locator("input[name=grade][value='2']").check();
    page().locator("input[name=soft][value='exactly']").check();
    page().locator("#exactMinutes").fill("20");
    page().locator("input[name=causes][value='none_found']").check();
    press("Save the report");
  }

  private void writeProtocolWithLimit(String inThousand) {
    open("/protocols/write?from=" + SAMPLE);
    page().locator("#model-chance_of_120_minutes-in_1000").fill(inThousand);
    page().locator("#model-chance_of_120_minutes-source").selectOption("assumption");
    page().locator("#model-chance_of_120_minutes-words").fill("this clinic's own limit");
    press("Check it");
    assertThat(page().locator("#checked")).containsText("It contradicts nothing.");
    press("Sign this protocol for use");
    assertThat(page().locator("main")).containsText("as this clinic uses it, version 1");
  }

  private void changePlan(String path) {
    open(path + "/plan");
    page().locator("summary", containing("Change preparation, syringe or protocol")).click();
    page().locator("#protocol").selectOption("our-us-vial-syringe-label version 1");
    press("Change the plan");
  }

  @Test
  void a_signed_population_forecasts_moves_with_a_report_and_holds_a_step_at_the_limit() {
    String anselm = course("HL-1041");
    withdrawWhatTheDemoSigned();
    open(anselm + FORECAST);
    assertThat(answer()).containsText("No forecast: no population of the response model");

    signTheShippedPopulation();
    open(anselm + FORECAST);
    assertThat(forecast()).containsText("Population alprostadil-published version 2. " + CAVEAT);
    assertThat(forecast().locator("tbody tr")).hasCount(3);
    String before = forecast().locator("tbody tr").nth(2).locator("td").first().innerText();
    browser.inspect("course-forecast");

    report(anselm);
    assertThat(answer()).hasText("Increase: 0.5\u00a0mL");
    follow("Forecast");
    assertThat(forecast().locator("tbody tr").nth(2).locator("td").first()).not().hasText(before);
    assertThat(page().locator("svg.drawing-moves .drawing-useful")).hasCount(4);
    page().locator("summary").getByText("Every volume that can be drawn").click();
    assertThat(page().locator("details:has(summary:text('Every volume')) tbody tr")).hasCount(100);
    browser.inspect("forecast");

    writeProtocolWithLimit("1");
    changePlan(anselm);
    assertThat(page().locator("main"))
        .containsText("The response model finds the chance of a long erection above");
    assertThat(answer()).not().hasText("Increase: 0.5\u00a0mL");
    browser.inspect("course-held");
    follow("Forecast");
    assertThat(main()).containsText("The protocol allows a chance of 1 in 1000 of 2");
    assertThat(forecast()).containsText("Above the protocol's limit.");
  }

  @Test
  void a_document_with_faults_stays_as_it_was_pasted_and_each_fault_is_told() {
    open("/populations/new");
    browser.inspect("population-new");
    page().getByLabel("What it is called here").fill("Our Men");
    page().locator("#document").fill("{\"parameters\": {\"mu\": 1}}");
    press("Read it");

    assertThat(page().getByRole(AriaRole.ALERT)).containsText("name: \"Our Men\" was given");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("reference_group: must be a text");
    assertThat(page().locator("#document")).hasValue("{\"parameters\": {\"mu\": 1}}");
    browser.inspect("population-faults");
  }
}
