package rungwise.checks.home;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.AtTheDesk;
import rungwise.checks.browser.TestServer;

/** Names that are longer than a telephone is wide, or that are written from right to left. */
class NamesBrowserTest extends AtTheDesk {

  private static final Member NURSE = DemoClinic.MEMBERS.get(2);
  private static final int NARROWEST = 320;
  private static final int HEIGHT = 800;

  /** Invented: 90 letters without a place to break. */
  private static final String LONG = "Quellbrunnstein".repeat(6);

  /** Invented: in Hebrew and in Arabic letters. */
  private static final List<String> FROM_RIGHT =
      List.of(
          "\u05D0\u05D1\u05E0\u05E8 \u05DC\u05D5\u05D9\u05DF",
          "\u0633\u0627\u0645\u064A \u0646\u0648\u0631");

  /** What reaches over the edge of the page, which is then wider than the window. */
  private static final String BESIDE =
      """
      (() => {
        const page = document.documentElement;
        return page.scrollWidth <= page.clientWidth ? [] : [...document.querySelectorAll('body *')]
            .filter(e => e.getBoundingClientRect().right > page.clientWidth + 0.5)
            .map(e => e.outerHTML.slice(0, 100));
      })()
      """;

  NamesBrowserTest() {
    super(TestServer.withStory());
  }

  private String opened(String name, String number) {
    open("/courses/new");
    page().getByLabel("Full name").fill(name);
    page().getByLabel("Birth date").fill("1961-04-30");
    page().getByLabel("Record number").fill(number);
    check("group", "vasculogenic");
    check("preparation", "alprostadil-20");
    check("barrel", "u100-1");
    page().locator("input[name=protocol]").first().check();
    press("Open the course");
    page().waitForURL("**/courses/*-*");
    return page().url();
  }

  /** At the width of the narrowest telephone nothing stands beside the page. */
  private void fits(String address) {
    page().navigate(address);
    assertThat(page().evaluate(BESIDE)).as(address).isEqualTo(List.of());
  }

  @Test
  void a_name_of_ninety_letters_pushes_nothing_out_of_sight() {
    assertThat(LONG).hasSize(90);
    signIn(NURSE);
    String course = opened(LONG, "NB-1");
    page().setViewportSize(NARROWEST, HEIGHT);
    for (String place :
        List.of(
            "", "/report", "/reach", "/running", "/screening", "/vial", "/call", "/before-home")) {
      fits(course + place);
    }
    for (String place : List.of("/", "/room")) {
      fits(server.at(place).toString());
    }
    page().navigate(course);
    browser.inspect("name-long");
    open("/");
    browser.inspect("name-long-today");
  }

  /** The rest of a line stays where it is, and the name stands whole. */
  @Test
  void a_name_from_right_to_left_turns_nothing_else_round() {
    signIn(NURSE);
    for (String name : FROM_RIGHT) {
      String course = opened(name, "NB-" + name.length());
      for (String place : List.of("", "/report", "/reach", "/call")) {
        page().navigate(course + place);
        Locator isolated = page().locator("main bdi", containing(name)).first();
        assertThat(isolated).hasText(name);
        assertThat(isolated).hasCSS("unicode-bidi", "isolate");
      }
      page().navigate(course);
      browser.inspect("name-from-right-" + name.length());
    }
  }
}
