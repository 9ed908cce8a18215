package rungwise.checks.home;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.AtTheDesk;
import rungwise.checks.browser.TestServer;

/** The sheet that a man takes home, and what anybody who holds it is told, in the clinic. */
class SheetBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final String MAN = "Corvin Adeyemi";
  private static final int TRIES = 20;

  SheetBrowserTest() {
    super(TestServer.withStory());
  }

  private void openSheets() {
    open("/");
    page().getByRole(AriaRole.LINK, named(MAN)).first().click();
    page().waitForURL("**/courses/**");
    follow("Sheet for home");
    page().waitForURL("**/sheet");
  }

  private void fill(String language, String hospital) {
    check("language", language);
    check("paper", "letter");
    check("keeping", "FRIDGE");
    page().locator("#clinic_number").fill("312 555 0100");
    page().locator("#after_hours").fill("312 555 0101");
    page().locator("#hospital").fill(hospital);
    page().locator("#transport").fill("en taxi");
  }

  private String make() {
    openSheets();
    fill("es", "Hospital Muestra");
    press("Make the sheet");
    assertThat(page().locator(".notice")).containsText("The sheet is made");
    return page().locator("#made ~ div .record").first().textContent();
  }

  @Test
  void a_sheet_is_made_downloaded_and_told_to_be_current_until_his_treatment_is_paused()
      throws IOException {
    signIn(NURSE);
    String code = make();
    String sheets = page().url();
    browser.inspect("sheet");
    Download saved = page().waitForDownload(() -> page().locator("a[download]").first().click());
    byte[] start = Arrays.copyOf(Files.readAllBytes(saved.path()), 5);
    assertThat(new String(start, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");

    press("Sign out");
    ask(code);
    assertThat(main()).containsText("Esta hoja vale.");
    assertThat(main()).not().containsText(MAN);
    browser.inspect("sheet-current");

    signIn(NURSE);
    page().navigate(sheets.replace("/sheet", "/running"));
    page().locator("#pauseReason").fill("chest pain");
    press("Pause his treatment");
    press("Sign out");
    ask(code);
    assertThat(main()).containsText("Esta hoja ya no vale.");
    browser.inspect("sheet-not-current");
  }

  private void ask(String code) {
    open("/sheet");
    page().locator("#code").fill(code.toLowerCase(Locale.ROOT));
    page().locator("main button").click();
    page().waitForURL("**/sheet?code=*");
  }

  @Test
  void a_fault_is_said_at_its_field_and_what_was_typed_stays() {
    signIn(NURSE);
    openSheets();
    fill("en", "\u05d1\u05d9\u05ea");
    press("Make the sheet");

    assertThat(page().locator("#hospital-fault")).containsText("Latin letters");
    assertThat(page().locator("#clinic_number")).hasValue("312 555 0100");
    browser.inspect("sheet-refused");
  }

  @Test
  void a_code_that_was_never_given_tells_him_to_call_and_too_many_are_refused() {
    ask("2222 2222 2222");
    assertThat(main()).containsText("We do not know this code");
    assertThat(main()).containsText("No conocemos este c\u00f3digo");
    for (int tries = 0; tries < TRIES; tries++) {
      page().navigate(server.at("/sheet?code=222222222222").toString());
    }
    assertThat(main()).containsText("Too many tries from here");
  }

  @Test
  void a_prescriber_reads_and_signs_the_words() {
    signIn(PRESCRIBER);
    open("/words");
    browser.inspect("words");
    press("Sign these words for this clinic");

    assertThat(page().locator(".notice")).containsText("Signed.");
    Page.GetByRoleOptions sign = named("Sign these words for this clinic");
    assertThat(page().getByRole(AriaRole.BUTTON, sign)).hasCount(0);
  }
}
