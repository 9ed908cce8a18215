package rungwise.checks.provider;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;
import rungwise.clinic.people.Account;
import rungwise.web.provider.ProviderSettings;

/** People sign in with the clinic's own identity provider, which runs beside the server. */
@Tag("browser")
class ProviderBrowserTest {

  private static final Member KNOWN = DemoClinic.MEMBERS.get(1);
  private static final String NAME = "Northgate account";

  private final int port = ClinicProvider.freePort();
  private final String address = "http://localhost:" + port;
  private final ClinicProvider provider = ClinicProvider.start(address + "/sign-in/clinic/return");
  private final TestServer server =
      TestServer.start(
          clinic -> DemoClinic.fillPeople(clinic.people()),
          port,
          settings ->
              settings
                  .knownAs(URI.create(address))
                  .withProvider(
                      new ProviderSettings(
                          URI.create(provider.issuer()),
                          ClinicProvider.CLIENT,
                          ClinicProvider.SECRET,
                          "preferred_username",
                          NAME)));
  private final Browser browser = Browser.open();

  @AfterEach
  void close() {
    browser.close();
    server.close();
    provider.close();
  }

  private Page page() {
    return browser.page();
  }

  private void signInThere(String name) {
    page()
        .getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Sign in with " + NAME))
        .click();
    page().locator("input[name=username]").fill(name);
    page().locator("input[name=password]").fill(ClinicProvider.PASSWORD);
    page().locator("button[type=submit]").click();
  }

  @Test
  void who_has_an_account_here_is_signed_in_and_led_to_the_page_that_was_wanted() {
    assertThat(ClinicProvider.KNOWN).isEqualTo(KNOWN.signInName());
    page().navigate(address + "/preparations");
    browser.inspect("sign-in-provider");

    List<String> asked = new CopyOnWriteArrayList<>();
    page().onRequest(request -> asked.add(request.url()));
    signInThere(ClinicProvider.KNOWN);

    assertThat(page()).hasURL(address + "/preparations");
    assertThat(page().locator("header")).containsText(KNOWN.fullName());
    assertThat(asked)
        .anyMatch(
            url ->
                url.startsWith(provider.issuer() + "/oauth2/authorize")
                    && url.contains("code_challenge_method=S256")
                    && url.contains("nonce=")
                    && url.contains("state="));
  }

  @Test
  void who_has_none_here_gets_none() {
    List<Account> before = server.clinic().people().list();
    page().navigate(address + "/sign-in");

    signInThere(ClinicProvider.STRANGER);

    assertThat(page()).hasURL(address + "/sign-in?refused");
    assertThat(page().locator(".faults")).containsText("That did not open an account here");
    assertThat(server.clinic().people().list()).isEqualTo(before);
  }

  @Test
  void whose_account_here_has_ended_is_refused() {
    Account administrator = account(DemoClinic.MEMBERS.getFirst());
    server.clinic().people().deactivate(administrator.id(), account(KNOWN).id()).orThrow();
    page().navigate(address + "/sign-in");

    signInThere(ClinicProvider.KNOWN);

    assertThat(page()).hasURL(address + "/sign-in?refused");
  }

  private Account account(Member member) {
    return server.clinic().people().list().stream()
        .filter(found -> found.signInName().text().equals(member.signInName()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void an_answer_that_this_browser_did_not_ask_for_is_refused() {
    page().navigate(address + "/sign-in/clinic/return?code=stolen&state=guessed");
    assertThat(page()).hasURL(address + "/sign-in?refused");

    page().navigate(address + "/sign-in/clinic");
    page().navigate(address + "/sign-in/clinic/return?code=stolen&state=guessed");
    assertThat(page()).hasURL(address + "/sign-in?refused");
  }

  @Test
  void while_the_provider_is_down_a_password_still_works() {
    provider.close();
    page().navigate(address + "/sign-in");
    page()
        .getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Sign in with " + NAME))
        .click();
    assertThat(page()).hasURL(address + "/sign-in?refused");

    page().getByLabel("Sign-in name").fill(KNOWN.signInName());
    page().getByLabel("Password").fill(KNOWN.password());
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in").setExact(true))
        .click();

    assertThat(page().locator("header")).containsText(KNOWN.fullName());
  }
}
