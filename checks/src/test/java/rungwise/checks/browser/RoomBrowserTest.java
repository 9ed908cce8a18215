package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.SelectOption;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/**
 * An injection in the clinic from the needle until he is soft, the board of the room, and a report
 * from a telephone call, in the invented clinic.
 */
class RoomBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  /** One a second. */
  private static final int KEYS_OF_A_MINUTE = 60;

  private static final int TIME_KEYS = 5;

  RoomBrowserTest() {
    super(TestServer.withStory());
  }

  @BeforeEach
  void begin() {
    signIn(PRESCRIBER);
  }

  /** Opens a man's course from the day's list and gives its address. */
  private String courseOf(String man) {
    open("/");
    page().getByRole(AriaRole.LINK, named(man)).click();
    page().waitForURL("**/courses/**");
    return page().url();
  }

  private String clock(Duration ago) {
    return CLOCK.format(server.clock().instant().minus(ago).atZone(ZONE));
  }

  private String day(Duration ago) {
    return server.clock().instant().minus(ago).atZone(ZONE).toLocalDate().toString();
  }

  /** Signs the first dose of a man who has had none, an hour before now. */
  private String signed() {
    server.clock().goBack(Duration.ofHours(6));
    String course = courseOf("Gideon Marsh");
    page().locator(".taps button").first().click();
    assertThat(page().locator(".notice")).containsText("The dose is signed.");
    settle();
    server.clock().comeHome();
    signIn(PRESCRIBER);
    return course;
  }

  private void inject(String course, Duration ago) {
    page().navigate(course + "/visit");
    page().locator("#startDate").fill(day(ago));
    page().locator("#startTime").fill(clock(ago));
    page().locator("#startSystolic").fill("128");
    page().locator("#startDiastolic").fill("76");
    page().locator("#startPulse").fill("72");
    check("startSide", "HIS_LEFT");
    page().locator("#startHour").selectOption("2");
    press("He was injected");
  }

  private void note(String moment, Duration ago, String grade) {
    check("noteMoment", moment);
    page().locator("#noteDate").fill(day(ago));
    page().locator("#noteTime").fill(clock(ago));
    page().locator("#noteGrade").selectOption(grade);
    press("Write it down");
  }

  private void end(String how, Duration ago) {
    check("endHow", how);
    page().locator("#endDate").fill(day(ago));
    page().locator("#endTime").fill(clock(ago));
    check("endCauses", "none_found");
    press("End the observation");
  }

  private static Page.LocatorOptions ofGideon() {
    return new Page.LocatorOptions().setHasText("Gideon Marsh");
  }

  private Locator faults() {
    return page().getByRole(AriaRole.ALERT).locator("li");
  }

  @Test
  void an_injection_is_watched_until_he_is_soft_and_the_report_says_what_was_seen() {
    String course = signed();
    page().navigate(course + "/visit");
    assertThat(page().locator(".dose .volume")).isVisible();
    assertThat(page().locator("main")).containsText("Nothing on record stops him.");
    browser.inspect("visit-before");

    inject(course, Duration.ofMinutes(70));
    assertThat(page().locator(".answer").first()).containsText("1\u00a0h 10\u00a0min since");
    assertThat(page().locator(".check")).containsText("Look at him now");
    note("FIRST_FIRM", Duration.ofMinutes(60), "2");
    note("USABLE", Duration.ofMinutes(55), "3");
    note("CHECKED", Duration.ofMinutes(20), "3");
    assertThat(page().locator("dl.times")).containsText("after 10\u00a0min");
    assertThat(page().locator("dl.times")).containsText("after 15\u00a0min");
    browser.inspect("visit-watched");
    open("/room");
    assertThat(page().locator(".man", ofGideon())).containsText("Gideon Marsh");
    assertThat(page().locator(".man", ofGideon())).containsText("HL-1083");
    assertThat(page().locator(".man", ofGideon())).containsText("-\u2060unit mark on a");
    assertThat(page().locator(".man", ofGideon())).containsText("usable");
    browser.inspect("room-board");

    page().navigate(course + "/visit");
    end("soft", Duration.ofMinutes(5));
    assertThat(page()).hasURL(course);
    assertThat(page().locator(".notice")).containsText("the report is on record");
    assertThat(page().locator("main")).containsText("soft after 1\u00a0h 5\u00a0min");
  }

  @Test
  void nobody_is_injected_against_the_checks_unless_it_has_happened_already() {
    String course = courseOf("Hannes Tamm");
    page().navigate(course + "/visit");
    browser.inspect("visit-blocked");
    page().getByText("He was injected all the same: write it down").click();
    page().locator("#startMark").fill("12");
    press("He was injected");

    assertThat(faults().first()).containsText("Not now:");
    assertThat(page().locator("#startMark")).hasValue("12");
    browser.inspect("visit-refused");
    check("startGiven", "yes");
    press("He was injected");
    assertThat(page().locator(".notice")).containsText("Recorded although:");
  }

  /** Hands the man on top of the board to the first who is on call. */
  private void handOver(String words) {
    page().getByRole(AriaRole.LINK, named("Hand him over to whoever is on call")).first().click();
    browser.inspect("hand-over");
    page().locator("#to").selectOption(new SelectOption().setIndex(0));
    page().locator("#tries").fill("2");
    page().locator("#words").fill(words);
    press("Hand him over");
  }

  @Test
  void whoever_left_while_firm_stands_first_until_he_is_handed_over_by_name() {
    String course = courseOf("Emeric Sand");
    assertThat(page().locator(".not-over h2")).containsText("emergency department now");
    assertThat(page().locator(".not-over .button"))
        .hasText(new String[] {"Open the call", "Write down how it ended", "Call 555 0172"});
    browser.inspect("course-not-over");
    page().navigate(course + "/order");
    browser.inspect("order-not-over");
    open("/");
    assertThat(page().locator(".not-over").first()).containsText("4 hours were at");
    browser.inspect("today-not-over");
    open("/room");
    assertThat(page().locator("h1")).containsText("1 man left while it was firm: call him now.");
    browser.inspect("room-left");

    handOver("his own number and his sister: no answer");

    assertThat(page().locator(".not-over")).hasCount(0);
    open("/");
    assertThat(page().locator(".not-over").first()).containsText("after 2 tries");
  }

  @Test
  void a_man_who_left_is_to_be_called_and_the_day_is_closed_only_when_nobody_is_left() {
    open("/room");
    handOver("no answer");
    String course = signed();
    page().navigate(courseOf("Jarek Oduya") + "/visit");
    check("endGrade", "1");
    end("soft", Duration.ofMinutes(1));
    open("/room");
    assertThat(page().locator(".answer")).hasText("Nobody is under observation.");
    browser.inspect("room-empty");
    inject(course, Duration.ofMinutes(30));
    open("/room");
    press("Close the day");
    assertThat(faults()).containsText("Gideon Marsh");
    browser.inspect("room-not-closed");

    page().navigate(course + "/visit");
    press("End the observation");
    assertThat(faults()).containsText("Choose how it ended");
    check("endGrade", "3");
    end("left", Duration.ofMinutes(2));
    assertThat(page().locator(".notice")).containsText("call him");
    open("/room");
    press("Close the day");
    assertThat(faults()).containsText("left while it was firm");
    handOver("his own number, no answer");
    press("Close the day");
    assertThat(page().locator(".notice")).containsText("The day is closed");
    assertThat(page().locator("main")).containsText("Today is closed.");
  }

  @Test
  void a_second_dose_of_the_visit_is_told_together_with_the_first() {
    String course = signed();
    inject(course, Duration.ofMinutes(45));
    check("endGrade", "0");
    end("soft", Duration.ofMinutes(15));
    page().locator(".taps button").first().click();
    page().navigate(course + "/visit");

    assertThat(page().locator(".alike")).containsText("Second dose.");
    assertThat(page().locator(".alike")).containsText("together 0.185\u00a0mL");
    assertThat(page().locator(".alike")).containsText("alprostadil 3.7\u00a0mcg");
    browser.inspect("visit-second-dose");
  }

  @Test
  void four_hours_are_an_emergency_before_anything_else() {
    String course = signed();

    inject(course, Duration.ofMinutes(245));

    assertThat(page().locator(".suspended .answer")).containsText("Emergency");
    browser.inspect("visit-emergency");
    open("/room");
    assertThat(page().locator(".man.emergency .alarm")).containsText("Emergency");
    browser.inspect("room-emergency");
  }

  @Test
  void a_report_by_telephone_takes_the_keys_of_less_than_a_minute() {
    press("Sign out");
    signIn(NURSE);
    String course = courseOf("Corvin Adeyemi");
    page().navigate(course + "/report");
    browser.inspect("report");
    Instant at = server.clock().instant().minus(Duration.ofHours(15));

    check("day", "other");
    page().locator("#date").fill(at.atZone(ZONE).toLocalDate().toString());
    page().locator("main").focus();

    int keys = browser.tabTo("identified");
    keys += strike("Space") + browser.tabTo("time");
    browser.type(CLOCK.format(at.atZone(ZONE)));
    keys += TIME_KEYS + browser.tabTo("grade");
    keys += strike("Space", "ArrowDown", "ArrowDown", "ArrowDown") + browser.tabTo("soft");
    keys += strike("Space", "ArrowDown", "Enter");

    assertThat(keys).isLessThan(KEYS_OF_A_MINUTE);
    assertThat(page().locator(".notice")).containsText("The report is on record.");
    assertThat(page().locator("main")).containsText("soft between 0\u00a0min and 1\u00a0h");
  }

  private int strike(String... keys) {
    browser.press(keys);
    return keys.length;
  }

  private void fillReport(Duration ago) {
    check("identified", "yes");
    check("day", "other");
    page().locator("#date").fill(day(ago));
    page().locator("#time").fill(clock(ago));
    check("grade", "3");
    check("soft", "up_to_60");
  }

  @Test
  void a_report_that_is_sent_twice_is_recorded_once_and_both_answers_say_so() {
    String course = courseOf("Corvin Adeyemi");
    page().navigate(course + "/report");
    fillReport(Duration.ofHours(15));
    Object answers =
        page()
            .evaluate(
                """
                async () => {
                  const form = document.querySelector('form[action$="/report"]');
                  const send = () => fetch(form.action,
                      {method: 'POST', body: new URLSearchParams(new FormData(form))});
                  const both = await Promise.all([send(), send()]);
                  return both.map(one => one.status + one.url).join(' ');
                }
                """);

    assertThat(answers).isEqualTo("200" + course + " 200" + course);
    press("Save the report");
    assertThat(page()).hasURL(course);
    assertThat(page().locator(".notice")).containsText("The report is on record.");
    page().navigate(course + "/injections");
    assertThat(page().locator("tbody tr")).hasCount(9 + 1); // the demo told nine of him
  }

  @Test
  void a_report_of_a_man_who_was_not_identified_is_refused_and_keeps_what_was_typed() {
    String course = courseOf("Corvin Adeyemi");
    page().navigate(course + "/report");
    fillReport(Duration.ofHours(15));
    page().locator("input[name=identified]").uncheck();
    press("Save the report");

    assertThat(faults()).hasCount(1);
    assertThat(faults()).containsText("birth date and his record number");
    assertThat(page().locator("input[name=soft][value=up_to_60]")).isChecked();
    browser.inspect("report-not-identified");
  }

  @Test
  void a_correction_shows_everything_that_was_reported() {
    String course = courseOf("Corvin Adeyemi");
    page().navigate(course + "/report");
    fillReport(Duration.ofHours(15));
    page().getByText("More details, if he tells them").click();
    page().locator("#onset").fill("12");
    page().locator("#side").selectOption("HIS_RIGHT");
    page().locator("#hour").selectOption("10");
    page().locator("#pain").fill("2");
    page().locator("#otherTablets").fill("one antihistamine");
    press("Save the report");
    follow("Injections");
    page().getByRole(AriaRole.LINK, named("Correct")).first().click();

    assertThat(page().locator("#onset")).hasValue("12");
    assertThat(page().locator("#side")).hasValue("HIS_RIGHT");
    assertThat(page().locator("#hour")).hasValue("10");
    assertThat(page().locator("#pain")).hasValue("2");
    assertThat(page().locator("#otherTablets")).hasValue("one antihistamine");
    assertThat(page().locator("input[name=soft][value=up_to_60]")).isChecked();
    assertThat(page().locator("input[name=identified]")).hasCount(0);
    browser.inspect("report-correction");
  }

  @Test
  void a_namesake_is_named_where_a_report_is_entered() {
    open("/courses/new");
    page().getByLabel("Full name").fill("Corvin Adeyemi");
    page().getByLabel("Birth date").fill("1990-01-01");
    page().getByLabel("Record number").fill("HL-2000");
    check("group", "vasculogenic");
    check("preparation", "alprostadil-20");
    check("barrel", "u100-1");
    check("protocol", "us-vial-syringe-label version 1");
    press("Open the course");
    page().navigate(page().url() + "/report");

    assertThat(page().locator(".alike")).containsText("2 November 1957");
    assertThat(page().locator(".alike")).containsText("HL-1017");
    browser.inspect("report-namesake");
  }

  @Test
  void a_dose_at_a_visit_is_drawn_from_a_vial_that_the_clinic_keeps() {
    open("/room");
    follow("Vials of the clinic");
    assertThat(page().locator("main")).containsText("None is on record");
    page().locator("#new-lot").fill("C-12");
    page().locator("#new-strength-alprostadil").fill("20");
    page().locator("#new-beyondUse").fill(day(Duration.ofDays(-30)));
    press("Save this vial");
    assertThat(page().getByRole(AriaRole.STATUS))
        .containsText("The vial of lot C-12 is on record.");
    browser.inspect("clinic-vials");
    follow("C-12");
    browser.inspect("clinic-vial");

    String course = signed();
    page().navigate(course + "/visit");
    page().locator("input[name=startVial]").nth(1).check();
    browser.inspect("visit-clinic-vial");
    page().locator("#startDate").fill(day(Duration.ZERO));
    page().locator("#startTime").fill(clock(Duration.ZERO));
    press("He was injected");

    page().navigate(course + "/record");
    assertThat(page().locator("main")).containsText("Vial of the clinic: lot C-12");
  }
}
