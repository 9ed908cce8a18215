package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

/** Preparations, syringes and the dose page, each in a clinic that starts with accounts only. */
class FormularyBrowserTest extends AtTheDesk {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member NURSE = DemoClinic.MEMBERS.get(2);

  FormularyBrowserTest() {
    super(TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people())));
  }

  private void ask(String preparation, String barrel, String by, String amount) {
    open(
        "/dose?preparation=%s&barrel=%s&by=%s&amount=%s"
            .formatted(preparation, barrel, by, amount));
  }

  private void enterTheHouseMixture(String alprostadil) {
    page().locator("#name").fill("House mixture");
    check("form", "solution");
    page().locator("#strength-papaverine").fill("30");
    page().locator("#strength-alprostadil").fill(alprostadil);
    page().locator("#ceiling").fill("0.5");
    check("inUse", "not_stated");
  }

  @Test
  void an_empty_clinic_says_what_to_do_first() {
    signIn(PRESCRIBER);

    open("/preparations");
    assertThat(main()).containsText("Do this first");
    browser.inspect("preparations-empty");
    open("/syringes");
    assertThat(main()).containsText("None is kept yet");
    browser.inspect("syringes-empty");
    open("/dose");
    assertThat(main()).containsText("published samples are offered");
    assertThat(page().locator("#preparation")).hasValue("");
    assertThat(page().locator("#barrel")).hasValue("");
    browser.inspect("dose-empty");
  }

  @Test
  void a_sample_is_kept_only_after_it_was_compared_with_a_label() {
    signIn(PRESCRIBER);
    open("/preparations");
    follow("Look at the published compositions");
    browser.inspect("samples");
    follow("Compare Three-drug mixture 30/1/10");

    press("Keep Three-drug mixture 30/1/10");
    assertThat(page().getByRole(AriaRole.ALERT).locator("li")).hasCount(2);
    browser.inspect("sample-refused");
    check("compared", "yes");
    check("inUse", "not_stated");
    press("Keep Three-drug mixture 30/1/10");

    assertThat(page().locator(".notice")).containsText("Three-drug mixture 30/1/10 is kept.");
    browser.inspect("preparations");
    follow("Published compositions");
    assertThat(main()).not().containsText("Three-drug mixture 30/1/10");
  }

  @Test
  void every_fault_stands_at_its_field_and_what_was_typed_stays() {
    signIn(PRESCRIBER);
    open("/preparations/new");
    browser.inspect("preparation-new");
    page().locator("#strength-alprostadil").fill("20 ug");
    page().locator("#limit-papaverine").fill(".5");
    page().locator("#ceiling").fill("1 cc");
    page().locator("#name").fill("House mixture");
    press("Keep this preparation");

    assertThat(page().locator("#strength-alprostadil-fault")).containsText("\"20 ug\"");
    assertThat(page().locator("#limit-papaverine-fault")).containsText("\".5\"");
    assertThat(page().locator("#ceiling-fault")).containsText("\"1 cc\"");
    assertThat(page().locator("#strength-alprostadil")).hasValue("20 ug");
    assertThat(page().locator("#name")).hasValue("House mixture");
    browser.inspect("preparation-refused");
  }

  @Test
  void a_slip_of_the_point_is_asked_back_until_the_same_is_typed_a_second_time() {
    signIn(PRESCRIBER);
    open("/preparations/new");
    enterTheHouseMixture("200");
    press("Keep this preparation");

    assertThat(page().locator("#again-alprostadil-fault")).containsText("far outside");
    browser.inspect("preparation-asked-back");
    page().locator("#again-alprostadil").fill("20");
    press("Keep this preparation");
    assertThat(page().locator("#again-alprostadil-fault")).containsText("and then as 20");
    page().locator("#again-alprostadil").fill("200");
    press("Keep this preparation");
    assertThat(page().locator(".notice")).containsText("House mixture is kept.");
  }

  @Test
  void a_change_is_a_new_version_and_the_old_one_stays_readable() {
    signIn(PRESCRIBER);
    open("/preparations/new");
    enterTheHouseMixture("10");
    press("Keep this preparation");
    follow("House mixture");
    String old = page().url();
    browser.inspect("preparation");
    follow("Change it");
    assertThat(page().locator("#strength-alprostadil")).hasValue("10");
    page().locator("#strength-alprostadil").fill("20");
    press("Keep the new version");
    follow("House mixture");
    assertThat(main()).containsText("alprostadil 20\u00a0mcg\u00a0per\u00a0mL");
    follow("The version before this one");

    assertThat(page().url()).isEqualTo(old);
    assertThat(main()).containsText("not in use any more");
    assertThat(main()).containsText("alprostadil 10\u00a0mcg\u00a0per\u00a0mL");
    assertThat(page().getByRole(AriaRole.LINK, named("Change it"))).hasCount(0);
    browser.inspect("preparation-replaced");
  }

  @Test
  void a_preparation_is_withdrawn_with_a_reason() {
    signIn(PRESCRIBER);
    open("/preparations/new");
    enterTheHouseMixture("10");
    press("Keep this preparation");
    follow("House mixture");
    page().getByText("Withdraw it").click();
    assertThat(main()).containsText("No man with a signed dose is reached by it.");
    browser.inspect("preparation-withdraw");
    page().locator("#reason").fill("No longer made");
    press("Withdraw House mixture");

    assertThat(page().locator(".notice")).containsText("House mixture is withdrawn.");
    assertThat(main()).containsText("None is kept yet");
  }

  @Test
  void a_syringe_is_kept_and_no_longer_kept() {
    signIn(PRESCRIBER);
    open("/syringes");
    press("Keep the 0.5 mL U-100 syringe");
    assertThat(page().locator(".notice")).containsText("The 0.5 mL U-100 syringe is kept.");
    assertThat(page().locator("tr.chosen")).hasCount(1);
    browser.inspect("syringes");
    press("Keep no longer the 0.5 mL U-100 syringe");

    assertThat(page().locator("tr.chosen")).hasCount(0);
  }

  @Test
  void a_nurse_reads_and_does_not_change() {
    signIn(NURSE);

    open("/preparations");
    assertThat(main()).containsText("Ask a prescriber");
    browser.inspect("preparations-nurse");
    open("/syringes");
    assertThat(main().getByRole(AriaRole.BUTTON)).hasCount(0);
    open("/preparations/new");
    assertThat(page().locator("#ceiling")).hasCount(0);
  }

  @Test
  void the_dose_page_says_the_volume_first_and_which_line_in_words() {
    signIn(PRESCRIBER);

    ask("three-drug-30-1-10", "u100-0.5", "mark", "22");
    assertThat(page().locator(".dose .volume")).hasText("0.22\u00a0mL");
    assertThat(page().locator(".dose .mark"))
        .hasText("22-\u2060unit mark on a 0.5\u00a0mL U-\u2060100 syringe");
    assertThat(page().locator("svg.drawing")).hasCount(1);
    assertThat(main()).containsText("two small lines past the 20");
    assertThat(main()).containsText("from memory");
    browser.inspect("dose");
    assertThat(browser.tooFaint(".dose")).isEmpty();
  }

  @Test
  void a_wanted_content_is_rounded_down_to_a_line_and_says_so() {
    signIn(PRESCRIBER);

    ask("alprostadil-20", "u100-0.5", "alprostadil", "1.25");

    assertThat(page().locator(".dose .volume")).hasText("0.06\u00a0mL");
    assertThat(main())
        .containsText("would be 0.0625\u00a0mL, between two lines: rounded down to 0.06\u00a0mL");
    browser.inspect("dose-rounded");
  }

  @Test
  void a_volume_between_two_lines_is_refused_and_leads_to_the_lower_line() {
    signIn(PRESCRIBER);

    ask("alprostadil-20", "u100-0.5", "volume", "0.125");
    assertThat(page().locator(".dose")).hasCount(0);
    assertThat(page().locator("svg.drawing")).hasCount(0);
    browser.inspect("dose-between-lines");
    page().locator("a", new Page.LocatorOptions().setHasText("next lower line")).click();

    assertThat(page().locator(".dose .volume")).hasText("0.12\u00a0mL");
  }

  @Test
  void what_no_signature_opens_is_shown_as_a_hard_stop_without_a_drawing() {
    signIn(PRESCRIBER);

    ask("alprostadil-20", "u100-0.3", "mark", "1");

    assertThat(page().locator(".dose")).hasCount(0);
    assertThat(page().locator("svg.drawing")).hasCount(0);
    assertThat(page().locator(".verdict.hard-stop")).hasCount(1);
    browser.inspect("dose-hard-stop");
    assertThat(browser.tooFaint(".verdict.hard-stop .word")).isEmpty();
  }

  @Test
  void everything_missing_from_a_question_is_told_at_once() {
    signIn(PRESCRIBER);

    ask("", "", "", "");

    assertThat(page().getByRole(AriaRole.ALERT).locator("li")).hasCount(3);
    browser.inspect("dose-nothing-chosen");
  }
}
