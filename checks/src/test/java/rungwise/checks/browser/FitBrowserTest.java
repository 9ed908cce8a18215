package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.app.server.OpenClinic;
import rungwise.files.history.HistoryFile;

/** The programme lead fits the model to the clinic's own courses, looks at it, and signs it. */
class FitBrowserTest extends AtTheDesk {

  private static final Member LEAD = DemoClinic.MEMBERS.get(1);
  private static final Path MEN = Path.of("..", "reference", "fit", "n300.csv.gz");
  private static final double LONGEST_MILLISECONDS = 240_000;

  FitBrowserTest() {
    super(TestServer.withStory(FitBrowserTest::fill, UnaryOperator.identity()));
  }

  private static void fill(OpenClinic clinic) {
    try {
      var survey = HistoryFile.survey(MEN.toString(), Files.readAllBytes(MEN));
      var imports = clinic.pastImports();
      imports.commit(imports.plan(survey.histories()), "n300", done -> {});
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Those of which the file has enough. */
  private void choose(String... groups) {
    open("/populations/fit");
    page().locator("#reference").selectOption("alprostadil-20");
    for (Locator box : page().locator("input[name=groups]").all()) {
      box.setChecked(List.of(groups).contains(box.getAttribute("value")));
    }
    page().locator("input[name=files]").check();
  }

  @Test
  void courses_are_chosen_fitted_looked_at_and_the_fit_is_signed() {
    signIn(LEAD);
    open("/populations/fit/result");
    browser.inspect("fit-none");
    open("/populations");
    page()
        .getByRole(
            AriaRole.LINK, new Page.GetByRoleOptions().setName("Fit one to your own courses"))
        .click();
    browser.inspect("fit-choose");
    for (Locator box : page().locator("input[name=groups]").all()) {
      box.uncheck();
    }
    press("Count these courses");
    assertThat(page().getByRole(AriaRole.ALERT)).containsText("groups: choose at least one");

    choose("vasculogenic", "neurogenic", "psychogenic", "mixed");
    press("Count these courses");
    assertThat(page().locator(".answer")).containsText("courses with");
    browser.inspect("fit-chosen");
    press("Run the fit");
    assertThat(page().locator("h1")).hasText(java.util.regex.Pattern.compile("The fit.*"));
    page()
        .waitForCondition(
            () -> page().locator("h1").innerText().equals("The fit"),
            new Page.WaitForConditionOptions().setTimeout(LONGEST_MILLISECONDS));
    assertThat(page().locator("svg[role=img]").first()).isVisible();
    assertThat(page().locator(".answer"))
        .hasText("Nothing was found that speaks against signing it.");
    browser.inspect("fit-result");

    page().getByLabel("What it is called here").fill("our-men-2026");
    page().locator("input[name=preparations][value='alprostadil-20']").check();
    press("Sign this fit for use");
    assertThat(page().locator("main")).containsText("our-men-2026 version 1");
    assertThat(page().locator("main"))
        .containsText("Fitted to the reports of this clinic's own men.");
  }
}
