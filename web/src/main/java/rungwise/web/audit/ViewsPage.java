package rungwise.web.audit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.CourseLooks;
import rungwise.clinic.audit.Look;
import rungwise.clinic.audit.Viewed.Outcome;
import rungwise.clinic.people.AccountId;

/**
 * Who has seen one course as shown, the newest view first.
 *
 * @param isNewest whether the list begins with the newest view
 * @param newestPath where it does
 * @param olderPath where the next part of the list is
 */
public record ViewsPage(
    String fullName,
    String recordNumber,
    List<Row> rows,
    boolean isNewest,
    String newestPath,
    Optional<String> olderPath) {

  /**
   * One view.
   *
   * @param isRefused whether the page was asked for and not shown
   */
  public record Row(String at, String who, String page, boolean isRefused) {}

  public ViewsPage {
    rows = List.copyOf(rows);
  }

  static ViewsPage of(
      CourseLooks looks, OptionalLong start, ClinicTime time, Function<AccountId, String> names) {
    String path = "/courses/" + looks.course() + "/views";
    return new ViewsPage(
        looks.patient().fullName(),
        looks.patient().recordNumber(),
        looks.looks().stream().map(look -> row(look, time, names)).toList(),
        start.isEmpty(),
        path,
        looks.older().isPresent()
            ? Optional.of(path + "?before=" + looks.older().getAsLong())
            : Optional.empty());
  }

  private static Row row(Look look, ClinicTime time, Function<AccountId, String> names) {
    return new Row(
        time.words(look.at()),
        names.apply(look.by()),
        look.screen().words(),
        look.outcome() == Outcome.REFUSED);
  }
}
