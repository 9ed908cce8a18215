package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("browser")
class FirstStartBrowserTest {

  @Test
  void the_first_administrator_makes_an_account_by_the_keyboard_alone() {
    try (TestServer server = TestServer.start(clinic -> {});
        Browser browser = Browser.open()) {
      String code = server.clinic().people().firstStart().orElseThrow().text();
      browser.page().navigate(server.at("/").toString());
      assertThat(browser.page()).hasTitle("First start - Northgate Clinic");
      browser.inspect("first-start");

      browser.tabTo("code");
      browser.type(code.toLowerCase(Locale.ROOT));
      browser.press("Tab");
      browser.type("Ana Ruiz");
      browser.press("Tab");
      browser.type("ana.ruiz");
      browser.press("Tab");
      browser.type("short");
      browser.press("Enter");
      assertThat(browser.page().locator("#password-fault")).containsText("at least 12");
      browser.inspect("first-start-refused");

      browser.tabTo("password");
      browser.type("four quiet words here");
      browser.press("Enter");
      assertThat(browser.page()).hasTitle("Sign in - Northgate Clinic");
      browser.inspect("sign-in-opened");
    }
  }
}
