package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.OpenClinic;
import rungwise.app.server.StoryClock;
import rungwise.files.history.HistoryFile;

/** The programme lead fits the model to the clinic's own courses, looks at it, and signs it. */
class FitBrowserTest {

  private static final Member LEAD = DemoClinic.MEMBERS.get(1);
  private static final Path MEN = Path.of("..", "reference", "fit", "n300.csv.gz");
  private static final double LONGEST_MILLISECONDS = 240_000;

  private final TestServer server = TestServer.start(FitBrowserTest::fill);
  private final Browser browser = Browser.open();

  @AfterEach
  void close() {
    browser.close();
    server.close();
  }

  private static void fill(OpenClinic clinic) {
    DemoClinic.fill(clinic, (StoryClock) clinic.clock(), ZoneId.of("America/Chicago"));
    try {
      var survey = HistoryFile.survey(MEN.toString(), Files.readAllBytes(MEN));
      var imports = clinic.pastImports();
      imports.commit(imports.plan(survey.histories()), "n300", done -> {});
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Page page() {
    return browser.page();
  }

  private void open(String path) {
    page().navigate(server.at(path).toString());
  }

  private void press(String button) {
    page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true))
        .click();
  }

  private void signIn() {
    open("/sign-in");
    page().getByLabel("Sign-in name").fill(LEAD.signInName());
    page().getByLabel("Password").fill(LEAD.password());
    press("Sign in");
  }

  private void choose(boolean isOnlyLarge) {
    open("/populations/fit");
    page().locator("#reference").selectOption("alprostadil-20");
    if (isOnlyLarge) {
      for (String group : new String[] {"spinal_cord", "diabetic", "unknown"}) {
        Locator box = page().locator("input[name=groups][value='" + group + "']");
        if (box.count() > 0) {
          box.uncheck();
        }
      }
    }
    page().locator("input[name=files]").check();
  }

  @Test
  void courses_are_chosen_fitted_looked_at_and_the_fit_is_signed() {
    signIn();
    open("/populations");
    page()
        .getByRole(
            AriaRole.LINK, new Page.GetByRoleOptions().setName("Fit one to your own courses"))
        .click();
    browser.inspect("fit-choose");
    press("Count these courses");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("reference: choose");

    choose(/* isOnlyLarge= */ true);
    press("Count these courses");
    assertThat(page().locator(".answer")).containsText("courses with");
    browser.inspect("fit-chosen");
    press("Run the fit");
    assertThat(page().locator("h1")).hasText(java.util.regex.Pattern.compile("The fit.*"));
    browser.inspect("fit-running");
    page()
        .waitForCondition(
            () -> page().locator("h1").innerText().equals("The fit"),
            new Page.WaitForConditionOptions().setTimeout(LONGEST_MILLISECONDS));
    assertThat(page().locator("svg[role=img]").first()).isVisible();
    browser.inspect("fit-result");
  }
}
