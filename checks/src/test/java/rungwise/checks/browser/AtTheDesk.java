package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.LoadState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import rungwise.app.server.DemoClinic.Member;

/** Somebody at a browser before a server of its own, and what he does on every page. */
@Tag("browser")
public abstract class AtTheDesk {

  protected final TestServer server;
  protected final Browser browser = Browser.open();

  protected AtTheDesk(TestServer server) {
    this.server = server;
  }

  @AfterEach
  protected final void leave() {
    browser.close();
    server.close();
  }

  protected final Page page() {
    return browser.page();
  }

  protected final Locator main() {
    return page().locator("main");
  }

  /** What a page answers; of a course what is advised, beside whether he may inject now. */
  protected final Locator answer() {
    return page().locator(".answer:not(.now)").first();
  }

  protected final void open(String path) {
    page().navigate(server.at(path.replace(" ", "%20")).toString());
  }

  /** A member who is known: whatever is opened next is opened as that member. */
  protected final void signIn(Member member) {
    signIn(member.signInName(), member.password());
    assertThat(page().getByRole(AriaRole.BUTTON, named("Sign out"))).isVisible();
  }

  /** Waits until the page has sent what it sends by itself, so that a clock may be set. */
  protected final void settle() {
    page().waitForLoadState(LoadState.NETWORKIDLE);
  }

  protected final void signIn(String name, String password) {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(name);
    page().getByLabel("Password").fill(password);
    press("Sign in");
  }

  protected final void press(String button) {
    page().getByRole(AriaRole.BUTTON, named(button)).click();
    page().waitForLoadState();
  }

  protected final void follow(String link) {
    page().getByRole(AriaRole.LINK, named(link)).first().click();
    page().waitForLoadState();
  }

  protected final void check(String name, String value) {
    page().locator("input[name='" + name + "'][value='" + value + "']").check();
  }

  protected static Page.GetByRoleOptions named(String name) {
    return new Page.GetByRoleOptions().setName(name).setExact(true);
  }

  protected static Page.LocatorOptions containing(String text) {
    return new Page.LocatorOptions().setHasText(text);
  }
}
