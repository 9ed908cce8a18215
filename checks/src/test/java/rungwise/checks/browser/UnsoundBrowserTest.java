package rungwise.checks.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.options.AriaRole;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import rungwise.app.server.DemoClinic;

/** What a prescriber sees of a man whose report another program has changed. */
class UnsoundBrowserTest extends AtTheDesk {

  UnsoundBrowserTest() {
    super(TestServer.withStory());
  }

  private void change(String course) throws SQLException {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + server.database());
        var statement = connection.createStatement()) {
      statement.execute("drop trigger injection_reported_is_not_changed");
      statement.execute(
          "update injection_reported set grade = (grade + 1) % 5 where entry_id in"
              + " (select id from entry where course_id = '"
              + course
              + "')");
    }
  }

  @Test
  void his_pages_say_so_above_everything_else_and_today_names_him() throws SQLException {
    signIn(DemoClinic.MEMBERS.get(1));
    open("/");
    page().getByRole(AriaRole.LINK, named("Dorian Velte")).first().click();
    String course = page().url();
    assertThat(main().getByText("This record is not as it was written")).hasCount(0);

    change(course.substring(course.lastIndexOf('/') + 1));

    page().navigate(course);
    assertThat(page().locator(".not-sound").first())
        .containsText("Inject nothing and sign nothing by it.");
    browser.inspect("unsound-course");
    page().navigate(course + "/report");
    assertThat(page().locator(".not-sound").first()).containsText("Reports can still be entered");
    browser.inspect("unsound-report");
    open("/");
    browser.inspect("unsound-today");
  }
}
