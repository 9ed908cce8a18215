package rungwise.checks.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import rungwise.web.page.Assets;
import rungwise.web.page.DoseLines;
import rungwise.web.page.VerdictLine;
import rungwise.web.page.VerdictLine.Kind;

/** The parts that carry a dose or a danger, by themselves. */
@Tag("browser")
class PartsBrowserTest {

  private static final DoseLines DOSE =
      new DoseLines(
          "0.2 mL",
          "20-unit mark on a 0.5 mL U-100 syringe",
          "papaverine hydrochloride 30 mg, phentolamine mesylate 1 mg, alprostadil 10 mcg per mL",
          "papaverine 6 mg, phentolamine 0.2 mg, alprostadil 2 mcg");

  private final TemplateEngine engine = TemplateEngine.createPrecompiled(ContentType.Html);

  private String render(String part, String name, Object view) {
    var html = new StringOutput();
    engine.render("part/" + part + ".jte", Map.of(name, view), html);
    return html.toString();
  }

  private void show(Browser browser) {
    String verdicts =
        Stream.of(
                new VerdictLine(
                    Kind.HARD_STOP,
                    "The last erection lasted 250 minutes.",
                    "A prescriber has to examine him first."),
                new VerdictLine(
                    Kind.HOLD,
                    "Two days have not passed since the last injection.",
                    "It clears on Sunday 14 June 2026, 23:30, in 9 hours."),
                new VerdictLine(Kind.NOTE, "The vial is 20 days old.", ""))
            .map(line -> render("verdict", "verdict", line))
            .collect(Collectors.joining());
    String css =
        new String(
            new Assets().asset("rungwise.css").orElseThrow().bytes(), StandardCharsets.UTF_8);
    browser
        .page()
        .setContent(
            "<!doctype html><html lang=en><title>Parts</title><style>"
                + css
                + "</style><main><h1>Parts</h1>"
                + render("dose", "dose", DOSE)
                + "<ul class=verdicts>"
                + verdicts
                + "</ul></main>");
  }

  @Test
  void a_dose_and_a_danger_have_a_contrast_of_seven_in_light_and_in_dark() {
    try (Browser browser = Browser.open()) {
      show(browser);

      browser.inspect("parts");

      assertThat(browser.tooFaint(".dose, .verdict.hard-stop")).isEmpty();
      browser.darken();
      assertThat(browser.tooFaint(".dose, .verdict.hard-stop")).isEmpty();
    }
  }

  @Test
  void the_volume_is_the_largest_text_and_stays_on_one_line_however_narrow_the_page() {
    try (Browser browser = Browser.open()) {
      show(browser);
      browser.page().setViewportSize(160, 900);

      Locator volume = browser.page().locator(".dose .volume .amount");

      BoundingBox box = volume.boundingBox();
      assertThat(box.height).isLessThan(48);
      assertThat(sizeOf(volume)).isGreaterThan(sizeOf(browser.page().locator(".dose .mark")));
      assertThat(volume.textContent()).isEqualTo("0.2\u00A0mL");
    }
  }

  private static double sizeOf(Locator text) {
    return ((Number) text.evaluate("e => parseFloat(getComputedStyle(e).fontSize)")).doubleValue();
  }

  @Test
  void digits_are_equally_wide_and_easily_confused_letters_differ() {
    try (TestServer server = TestServer.start(clinic -> {});
        Browser browser = Browser.open()) {
      browser.page().navigate(server.at("/first-start").toString());

      Object widths =
          browser
              .page()
              .evaluate(
                  """
                  async () => {
                    await document.fonts.ready;
                    const line = document.createElement('span');
                    document.querySelector('main').append(line);
                    const widths = [...'0123456789'].map(digit => {
                      line.textContent = digit.repeat(20);
                      return Math.round(line.getBoundingClientRect().width * 10);
                    });
                    return new Set(widths).size;
                  }
                  """);

      assertThat(widths).isEqualTo(1);
      assertThat(
              browser
                  .page()
                  .evaluate("document.fonts.check('16px \"Atkinson Hyperlegible Next\"')"))
          .isEqualTo(true);
    }
  }
}
