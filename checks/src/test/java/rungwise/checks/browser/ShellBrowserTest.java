package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;

@Tag("browser")
class ShellBrowserTest {

  private static final Member ADMINISTRATOR = DemoClinic.MEMBERS.getFirst();
  private static final Member NURSE = DemoClinic.MEMBERS.get(2);

  private static final TestServer server = start();
  private final Browser browser = Browser.open();

  private static TestServer start() {
    return TestServer.start(clinic -> DemoClinic.fillPeople(clinic.people()));
  }

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

  private void open(String path) {
    page().navigate(server.at(path).toString());
  }

  private void signIn(Member member) {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(member.signInName());
    page().getByLabel("Password").fill(member.password());
    page().getByRole(AriaRole.BUTTON, named("Sign in")).click();
    assertThat(page()).hasTitle("Today - Northgate Clinic");
  }

  private static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  @Test
  void the_sign_in_page_is_fit_to_be_seen() {
    open("/sign-in");

    browser.inspect("sign-in");
  }

  @Test
  void one_signs_in_and_out_by_the_keyboard_alone() {
    open("/sign-in");

    browser.tabTo("signInName");
    browser.type(NURSE.signInName());
    browser.press("Tab");
    browser.type(NURSE.password());
    browser.press("Enter");
    assertThat(page()).hasTitle("Today - Northgate Clinic");
    browser.tabToWords("Sign out");
    browser.press("Enter");

    assertThat(page()).hasTitle("Sign in - Northgate Clinic");
  }

  @Test
  void a_wrong_password_is_said_where_the_reader_is_and_the_name_stays() {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(NURSE.signInName());
    page().getByLabel("Password").fill("not the password at all");
    browser.press("Enter");

    Locator faults = page().getByRole(AriaRole.ALERT);
    assertThat(faults).containsText("do not belong together");
    assertThat(faults).isFocused();
    assertThat(page().getByLabel("Sign-in name")).hasValue(NURSE.signInName());
    assertThat(page().getByLabel("Password")).hasValue("");
    browser.inspect("sign-in-refused");
  }

  @Test
  void today_says_what_to_do_first_while_it_is_empty() {
    signIn(ADMINISTRATOR);

    assertThat(page().getByRole(AriaRole.HEADING).first())
        .hasText("Your roles show you no man's course.");
    browser.inspect("today-empty");
  }

  @Test
  void the_head_names_the_clinic_and_who_is_signed_in_and_only_open_places() {
    signIn(NURSE);

    assertThat(page().locator(".head")).containsText("Northgate Clinic");
    assertThat(page().locator(".head")).containsText(NURSE.fullName());
    assertThat(page().getByRole(AriaRole.LINK, named("People"))).hasCount(0);
  }

  @Test
  void an_administrator_invites_somebody_by_the_keyboard_alone() {
    signIn(ADMINISTRATOR);

    browser.tabToWords("People");
    browser.press("Enter");
    assertThat(page()).hasTitle("People - Northgate Clinic");
    browser.tabToWords("Invite somebody");
    browser.press("Enter");
    assertThat(page()).hasTitle("Invite somebody - Northgate Clinic");
    browser.tabTo("fullName");
    browser.type("Oren Vale");
    browser.press("Tab");
    browser.type("oren.vale");
    browser.tabTo("roles");
    browser.press("Space", "Enter");

    assertThat(page().getByRole(AriaRole.HEADING, named("Oren Vale"))).isVisible();
    String code = page().locator(".code").innerText();
    assertThat(code).matches("[0-9A-Z]{4}(-[0-9A-Z]{4}){3}");
    browser.inspect("account-with-code");
    page().reload();
    assertThat(page().locator(".code")).hasCount(0);
  }

  @Test
  void the_pages_about_people_are_fit_to_be_seen() {
    signIn(ADMINISTRATOR);
    open("/people");
    browser.inspect("people");

    page().getByRole(AriaRole.LINK, named(NURSE.fullName())).click();
    page().getByText("End this account").click();

    browser.inspect("account");
  }

  @Test
  void a_form_with_faults_links_each_of_them_to_its_field() {
    signIn(ADMINISTRATOR);
    open("/people/invite");
    page().getByLabel("Full name").fill(" ");
    page().getByLabel("Sign-in name").fill("Oren Vale");
    browser.press("Enter");

    Locator faults = page().getByRole(AriaRole.ALERT);
    assertThat(faults.getByRole(AriaRole.LINK)).hasCount(3);
    assertThat(page().getByLabel("Sign-in name")).hasValue("Oren Vale");
    browser.inspect("invite-refused");
    faults.getByRole(AriaRole.LINK).first().click();
    assertThat(page().evaluate("document.activeElement.id")).isEqualTo("fullName");
  }

  @Test
  void what_goes_wrong_has_a_page_with_a_way_on() {
    signIn(NURSE);

    open("/people");
    assertThat(page().locator("h1")).hasText("This page is not open to you");
    browser.inspect("fault-403");
    open("/nowhere");
    assertThat(page().locator("h1")).hasText("There is no such page");
    browser.inspect("fault-404");
    open("/sign-out");
    assertThat(page().locator("h1")).hasText("That cannot be done here");
    browser.inspect("fault-405");
    page().getByRole(AriaRole.LINK, named("Go to Today")).last().click();
    assertThat(page().locator("h1")).hasText("Nobody needs you now.");
  }

  @Test
  void a_form_that_outlived_its_session_says_that_nothing_was_saved() {
    open("/sign-in");
    page().context().clearCookies();
    page().getByLabel("Sign-in name").fill(NURSE.signInName());
    page().getByLabel("Password").fill(NURSE.password());
    browser.press("Enter");

    assertThat(page().locator("h1")).hasText("Your page was open too long");
    browser.inspect("fault-too-long");
  }
}
