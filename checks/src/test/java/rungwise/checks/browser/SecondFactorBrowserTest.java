package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.SelectOption;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.clinic.factor.FactorRule;
import rungwise.clinic.factor.FactorRule.Asked;

/** A prescriber sets up a second factor where he was about to sign, and signs. */
@Tag("browser")
class SecondFactorBrowserTest {

  private static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();
  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);
  private static final Member ON_CALL = DemoClinic.MEMBERS.get(3);
  private static final String REASON = "One step down, because he \"bruised\" & is anxious";
  private static final String SIGNED = "The dose is signed.";

  private final TestServer server =
      TestServer.withStory(
          clinic -> {},
          settings ->
              settings.withFactors(
                  new FactorRule(Asked.OF_EVERYBODY_WHO_SIGNS, FactorRule.SAMPLE_SHIFT)));

  private final Browser browser = Browser.open();

  @AfterEach
  void close() {
    browser.close();
    server.close();
  }

  private Page page() {
    return browser.page();
  }

  private void assertReasonIsOnRecord() {
    page().navigate(page().url().replaceFirst("[?#].*", "") + "/record");
    assertThat(page().locator("main")).containsText(REASON);
  }

  private void open(String path) {
    page().navigate(server.byName(path).toString());
  }

  private void signIn(Member member) {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(member.signInName());
    page().getByLabel("Password").fill(member.password());
    press(page(), "Sign in");
  }

  private static void press(Page where, String button) {
    where
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true))
        .click();
  }

  private static Locator link(Page where, String name) {
    return where.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  /** Opens the first course of the day's list that has a dose to be signed with a reason. */
  private void openCourseToSign() {
    open("/");
    List<String> courses =
        page().locator("main th a").all().stream().map(a -> a.getAttribute("href")).toList();
    for (String course : courses) {
      open(course);
      if (page().locator("details.signing").count() > 0) {
        return;
      }
    }
    throw new AssertionError("no course has a dose to be signed");
  }

  private void signWithReason() {
    page().locator("details.signing summary").click();
    Locator form = page().locator("details.signing form");
    form.getByText("in the clinic", new Locator.GetByTextOptions().setExact(false)).first().click();
    form.locator("input[name=volume]").first().check();
    form.locator("select[name=changed]").selectOption(new SelectOption().setIndex(1));
    form.locator("input[name=signReason]").fill(REASON);
    form.getByRole(AriaRole.BUTTON).click();
  }

  private String codeNow(AuthenticatorApp app) {
    return app.codeAt(server.clock().instant());
  }

  private AuthenticatorApp setUp(Page where) {
    AuthenticatorApp app = AuthenticatorApp.typed(where.locator(".code.secret").innerText());
    where.getByLabel("Code").fill(codeNow(app));
    press(where, "Set it up");
    assertThat(where.locator(".recovery li")).hasCount(8);
    return app;
  }

  @Test
  void the_first_signature_asks_for_a_second_factor_and_then_goes_on_with_all_that_was_typed() {
    signIn(PRESCRIBER);
    openCourseToSign();
    signWithReason();
    assertThat(page().locator("h1")).hasText("Set up your second factor first");
    browser.inspect("second-factor-missing");

    Page tab = page().context().waitForPage(() -> link(page(), "Set it up in a new tab").click());
    AuthenticatorApp app = setUp(tab);
    tab.close();
    press(page(), "Go on");
    assertThat(page().locator("main")).containsText(SIGNED);
    assertReasonIsOnRecord();

    press(page(), "Sign out");
    // A minute later, so that the app shows a code that was not used.
    server.clock().goBack(Duration.ofMinutes(-1));
    signIn(PRESCRIBER);
    openCourseToSign();
    signWithReason();
    assertThat(page().locator("h1")).hasText("Give your second factor to go on");
    browser.inspect("second-factor");
    browser.tabTo("secondFactorCode");
    browser.type("000000");
    browser.press("Enter");
    assertThat(page().locator(".faults")).containsText("The code is not right");
    browser.tabTo("secondFactorCode");
    browser.type(codeNow(app));
    browser.press("Enter");
    assertThat(page().locator("main")).containsText(SIGNED);
  }

  @Test
  void the_account_page_leads_through_an_app_and_its_recovery_codes_by_keyboard() {
    signIn(PRESCRIBER);
    link(page(), PRESCRIBER.fullName()).click();
    assertThat(page().locator("h1")).hasText("You need a second factor before you can sign.");
    browser.inspect("account-without-factor");
    link(page(), "Change your password").click();
    browser.inspect("change-password");
    link(page(), "Back to your account").click();
    link(page(), "Set up an authenticator app").click();
    browser.inspect("authenticator");
    String shown = page().locator(".code.secret").innerText();
    browser.tabTo("code");
    browser.type(codeNow(AuthenticatorApp.typed(shown)));
    browser.press("Enter");

    assertThat(page().locator(".recovery li")).hasCount(8);
    browser.inspect("account-with-codes");
    page().reload();
    assertThat(page().locator(".recovery li")).hasCount(0);
  }

  /** A device that keeps passkeys and always verifies its holder. */
  private void plugIn() {
    CDPSession session = page().context().newCDPSession(page());
    session.send("WebAuthn.enable");
    var options = new JsonObject();
    options.addProperty("protocol", "ctap2");
    options.addProperty("transport", "internal");
    options.addProperty("hasResidentKey", true);
    options.addProperty("hasUserVerification", true);
    options.addProperty("isUserVerified", true);
    options.addProperty("automaticPresenceSimulation", true);
    var arguments = new JsonObject();
    arguments.add("options", options);
    session.send("WebAuthn.addVirtualAuthenticator", arguments);
  }

  @Test
  void a_passkey_is_added_stands_for_the_second_factor_and_signs_in_alone() {
    plugIn();
    signIn(PRESCRIBER);
    open("/account");
    page().getByLabel("Name of the passkey").fill("desk computer");
    press(page(), "Add a passkey");
    assertThat(page().locator("main")).containsText("The passkey is added.");
    assertThat(page().locator(".recovery li")).hasCount(8);
    browser.inspect("account-with-passkey");

    press(page(), "Sign out");
    signIn(PRESCRIBER);
    openCourseToSign();
    signWithReason();
    assertThat(page().locator("h1")).hasText("Give your second factor to go on");
    browser.inspect("second-factor-passkey");
    press(page(), "Use a passkey");
    assertThat(page().locator("main")).containsText(SIGNED);
    assertReasonIsOnRecord();

    press(page(), "Sign out");
    open("/sign-in?next=%2Faccount");
    browser.inspect("sign-in-passkey");
    press(page(), "Sign in with a passkey");
    assertThat(page()).hasTitle("Your account - Northgate Clinic");
    press(page(), "Remove desk computer");
    assertThat(page().locator("main")).containsText("The passkey is removed.");

    press(page(), "Sign out");
    open("/sign-in");
    press(page(), "Sign in with a passkey");
    assertThat(page().locator(".faults")).containsText("That did not open an account here");
  }

  @Test
  void an_administrator_sees_who_is_signed_in_resets_a_device_and_searches_the_trail() {
    signIn(ON_CALL);
    page().locator("main th a").first().click();
    assertThat(page().locator("h1")).hasText("Say why you open this course");
    browser.inspect("take-access");
    page().getByText("His erection is not going down").click();
    press(page(), "Open the course");
    assertThat(page().locator("h1")).not().hasText("Say why you open this course");
    press(page(), "Sign out");

    signIn(ADMINISTRATOR);
    link(page(), "Signed in now").first().click();
    browser.inspect("sessions");
    link(page(), "Access taken").click();
    assertThat(page().locator("tbody")).containsText("His erection is not going down");
    browser.inspect("access-taken");
    link(page(), "Audit trail").click();
    browser.inspect("audit-trail");
    page().getByLabel("What happened").selectOption("access_taken");
    press(page(), "Search");
    assertThat(page().locator("tbody tr")).hasCount(1);
    link(page(), "People").click();
    link(page(), PRESCRIBER.fullName()).click();
    browser.inspect("account-of-somebody");
    link(page(), "Second factor").click();
    browser.inspect("second-factor-reset");
  }
}
