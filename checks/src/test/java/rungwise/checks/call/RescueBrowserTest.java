package rungwise.checks.call;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;

/** Phenylephrine is prepared in a browser without script, with nobody signed in. */
@Tag("browser")
final class RescueBrowserTest {

  private final TestServer server =
      TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people()));

  @AfterEach
  void close() {
    server.close();
  }

  private void fill(Page page, String field, String text) {
    page.locator("#" + field).fill(text);
  }

  private static void send(Page page, String button) {
    page.locator("button:has-text('" + button + "')").click();
  }

  private static Locator main(Page page) {
    return page.locator("main");
  }

  @Test
  void it_is_prepared_without_signing_in_and_without_script() {
    try (Browser browser = Browser.withoutScript()) {
      Page page = browser.page();
      page.navigate(server.at("/call/rescue").toString());
      assertThat(main(page)).containsText("raises blood pressure: the rescue");
      assertThat(main(page)).containsText("lowers blood pressure");
      assertThat(main(page)).containsText("The local protocol and the treating physician decide");

      fill(page, "stock", "10 mg/mL");
      fill(page, "dose", "100 mcg");
      send(page, "Show how");

      assertThat(page.locator(".dose")).containsText("1 mL line on a 1 mL syringe");
      assertThat(page.locator(".mixing > li")).hasCount(2);
      assertThat(page.locator(".mixing > li").first()).containsText("not for him");
      assertThat(page.locator(".suspended")).containsText(Pattern.compile("1,000.mcg instead"));
      assertThat(page.locator("#rescue-label")).containsText("NOT FOR A VEIN");
      assertThat(page.locator("#rescue-label")).containsText("Second person");

      fill(page, "oxygen", "25 mmHg");
      fill(page, "carbon-dioxide", "55 mmHg");
      fill(page, "ph", "7.3");
      send(page, "Read it");

      assertThat(page.locator(".gas")).containsText("treat as ischaemic until that is excluded");
      assertThat(page.locator(".mixing > li")).hasCount(2);
    }
  }

  @Test
  void every_refusal_is_seen_at_its_field_and_a_second_typing_is_asked_for() {
    try (Browser browser = Browser.open()) {
      Page page = browser.page();
      page.navigate(server.at("/call/rescue").toString());
      browser.inspect("rescue");
      fill(page, "stock", "1:1000");
      fill(page, "wanted", "1000 mcg/mL");
      fill(page, "dose", "600 mcg");
      send(page, "Show how");

      assertThat(page.locator("#stock-fault")).containsText("is a ratio or a percentage");
      assertThat(page.locator("#wanted-fault")).containsText("the strongest that is published");
      assertThat(page.locator("#dose-again-fault")).containsText("type it a second time");
      assertThat(page.locator(".mixing")).hasCount(0);
      browser.inspect("rescue-refused");

      fill(page, "stock", "10 mg/mL");
      fill(page, "wanted", "500 mcg/mL");
      fill(page, "dose-again", "60 mcg");
      send(page, "Show how");
      assertThat(page.locator("#dose-again-fault")).containsText("both must be the same");

      fill(page, "dose-again", "600 mcg");
      send(page, "Show how");
      assertThat(page.locator(".dose")).containsText("1.2");
      browser.inspect("rescue-prepared");
    }
  }

  @Test
  void the_label_is_printed_alone_once_its_link_was_followed() {
    try (Browser browser = Browser.open()) {
      Page page = browser.page();
      page.navigate(
          server
              .at(
                  "/call/rescue?stock=10+mg%2FmL&way=two&wanted=100+mcg%2FmL&total=10+mL"
                      + "&dose=100+mcg")
              .toString());
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
      assertThat(page.locator(".mixing")).isVisible();
      assertThat(page.locator("#stock")).isHidden();
      assertThat(page.locator("#rescue-label")).isVisible();

      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
      page.locator("a[href='#rescue-label']").click();
      page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));

      assertThat(page.locator("#rescue-label")).isVisible();
      assertThat(page.locator(".mixing")).isHidden();
      assertThat(page.locator(".look-alike")).isHidden();
    }
  }
}
