package rungwise.checks.look;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.app.server.DemoClinic;
import rungwise.app.server.DemoClinic.Member;
import rungwise.checks.browser.Browser;
import rungwise.checks.browser.TestServer;

/**
 * The course page answers at one look: on a desk's screen without scrolling, on a telephone's
 * within two screens.
 */
@Tag("browser")
class CourseAtOneLookBrowserTest {

  private static final Member PRESCRIBER = DemoClinic.MEMBERS.get(1);

  /** A common screen of a desk, and one of a telephone: of the latter two may be needed. */
  private static final int DESK_WIDTH = 1440;

  private static final int DESK_HEIGHT = 900;
  private static final int TELEPHONE_WIDTH = 390;
  private static final int TELEPHONE_HEIGHT = 844;

  private static final String STOPPED = "HL-1072";
  private static final String STEPPING_UP = "HL-1041";
  private static final String MANY_INJECTIONS = "HL-1017";

  private static final TestServer server = TestServer.withStory();

  private final Browser browser = Browser.open();

  @AfterAll
  static void close() {
    server.close();
  }

  @BeforeEach
  void signIn() {
    Page page = browser.page();
    page.navigate(server.at("/sign-in").toString());
    page.getByLabel("Sign-in name").fill(PRESCRIBER.signInName());
    page.getByLabel("Password").fill(PRESCRIBER.password());
    button("Sign in").click();
    assertThat(button("Sign out")).isVisible();
  }

  @AfterEach
  void leave() {
    browser.close();
  }

  private Locator button(String name) {
    return browser
        .page()
        .getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static String course(String number) {
    return "/courses/" + server.clinic().coursesOf(number).getFirst().id();
  }

  private void open(String path, int width, int height) {
    browser.page().setViewportSize(width, height);
    browser.page().navigate(server.at(path).toString());
  }

  private double bottom(String selector) {
    Locator first = browser.page().locator(selector).first();
    assertThat(first).isVisible();
    BoundingBox box = first.boundingBox();
    return box.y + box.height;
  }

  /** Each with what is done next on it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "HL-1072|.not-over .button.grave|an emergency that nobody reviewed",
        "HL-1080|.answers a.way|stopped until a prescriber decides",
        "HL-1066|.taps button.primary|one that lasted too long: a lower dose to sign",
        "HL-1041|.taps button.primary|a higher dose to sign",
        "HL-1017|.answers .button.primary|settled, with the most injections of all",
        "HL-1085|.answers a.way|new, and not screened",
        "HL-1083|.taps button.primary|new, with the first dose to sign",
      })
  void answer_advice_and_button_are_seen_at_one_look(String number, String button, String which) {
    for (boolean isDesk : List.of(true, false)) {
      open(
          course(number),
          isDesk ? DESK_WIDTH : TELEPHONE_WIDTH,
          isDesk ? DESK_HEIGHT : TELEPHONE_HEIGHT);
      int most = isDesk ? DESK_HEIGHT : 2 * TELEPHONE_HEIGHT;

      assertThat(bottom(".identity h1")).as(which).isLessThan(most);
      assertThat(bottom(".answer.now")).as("the answer, %s", which).isLessThan(most);
      assertThat(bottom(".answer:not(.now)")).as("the advice, %s", which).isLessThan(most);
      assertThat(bottom(button)).as("the button, %s", which).isLessThan(most);
    }
  }

  @Test
  void nothing_stands_between_the_danger_and_its_button() {
    open(course(STOPPED), TELEPHONE_WIDTH, TELEPHONE_HEIGHT);

    assertThat(bottom(".not-over .button.grave")).isLessThan(TELEPHONE_HEIGHT);
    assertThat(browser.page().locator(".not-over :is(a, button, input, summary)").first())
        .hasText("Open the call");
  }

  @Test
  void drawings_stand_side_by_side_and_are_explained_once() {
    open(course(MANY_INJECTIONS), DESK_WIDTH, DESK_HEIGHT);
    Locator drawings = browser.page().locator(".small-ones svg");
    assertThat(drawings).hasCount(3);

    List<BoundingBox> boxes = drawings.all().stream().map(Locator::boundingBox).toList();
    assertThat(boxes).extracting(box -> box.x).isSorted();
    assertThat(boxes).allSatisfy(box -> assertThat(box.height).isBetween(100.0, 300.0));
    assertThat(browser.page().locator(".small-ones .drawing-key")).hasCount(0);
    assertThat(browser.page().locator(".small-ones .legend")).hasCount(1);
  }

  @Test
  void what_is_not_asked_by_telephone_is_one_tap_away_with_an_address() {
    open(course(STEPPING_UP), TELEPHONE_WIDTH, TELEPHONE_HEIGHT);
    browser.inspect("course-now");
    for (List<String> place :
        List.of(
            List.of("Injections", "injections", "Injections, 2"),
            List.of("Forecast", "forecast", "What a dose may do"),
            List.of("Plan", "plan", "Titration schedule"),
            List.of("Screening", "screening", "Settled"),
            List.of("Record", "record", "The whole record"))) {
      browser
          .page()
          .getByRole(AriaRole.NAVIGATION, new Page.GetByRoleOptions().setName("Pages about him"))
          .getByRole(AriaRole.LINK, new Locator.GetByRoleOptions().setName(place.getFirst()))
          .click();

      assertThat(browser.page())
          .hasURL(server.at(course(STEPPING_UP) + "/" + place.get(1)).toString());
      assertThat(browser.page()).hasTitle(Pattern.compile("Anselm Birk"));
      assertThat(browser.page().locator("h2", new Page.LocatorOptions().setHasText(place.get(2))))
          .isVisible();
      assertThat(browser.page().locator(".of-man [aria-current]")).hasText(place.getFirst());
      browser.inspect("course-" + place.get(1));
    }
  }

  /** On one sheet each; a block of an open erection needs a second one. */
  @ParameterizedTest
  @CsvSource({
    "HL-1041,'',Anselm Birk,1",
    "HL-1072,'',Emeric Sand,2",
    "HL-1017,/order,Corvin Adeyemi,1",
    "'','/',Corvin Adeyemi,2",
  })
  void a_page_is_printed_by_a_control_with_the_time_of_printing(
      String number, String path, String man, int most) throws IOException {
    Page page = browser.page();
    page.addInitScript("window.print = () => { window.isPrinted = true; }");
    open((number.isEmpty() ? "" : course(number)) + path, DESK_WIDTH, DESK_HEIGHT);
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Print this page")).click();
    page.waitForFunction("window.isPrinted === true");
    assertThat(page).not().hasURL(Pattern.compile("paper"));

    byte[] printed = page.pdf(new Page.PdfOptions().setFormat("A4").setPrintBackground(true));
    try (PDDocument sheets = Loader.loadPDF(printed)) {
      assertThat(sheets.getNumberOfPages()).isLessThanOrEqualTo(most);
      assertThat(new PDFTextStripper().getText(sheets))
          .contains(man)
          .containsPattern("Printed \\w+ \\d+ \\w+ \\d{4} \\d\\d:\\d\\d")
          .contains("Tobias Wren");
    }
  }
}
