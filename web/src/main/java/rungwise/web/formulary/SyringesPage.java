package rungwise.web.formulary;

import java.util.List;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.dosing.known.Barrel;
import rungwise.dosing.known.Barrels;
import rungwise.dosing.known.Marking;
import rungwise.web.page.Fault;
import rungwise.web.page.Faults;

/** The known types of syringe, and which of them the clinic keeps. */
public record SyringesPage(String notice, Faults faults, List<Row> rows, boolean mayChange) {

  /** One type. */
  public record Row(String words, String lines, String path, boolean isKept) {}

  public SyringesPage {
    rows = List.copyOf(rows);
  }

  static SyringesPage of(Formulary formulary, Account actor) {
    List<Barrel> kept = formulary.syringes();
    return new SyringesPage(
        "",
        Faults.NONE,
        Barrels.all().stream()
            .map(
                one ->
                    new Row(
                        one.words(), lines(one), "/syringes/" + one.token(), kept.contains(one)))
            .toList(),
        PreparationsPage.mayChange(actor));
  }

  private static String lines(Barrel barrel) {
    return switch (barrel.marking()) {
      case Marking.UnitLines lines ->
          "a line every "
              + lines.graduation()
              + ", a number every "
              + lines.numberedEvery()
              + ", scale at least "
              + lines.scaleMillimetres()
              + " mm";
      case Marking.MillilitreLines lines ->
          "a line every "
              + lines.graduation()
              + ", a number every "
              + lines.numberedEvery()
              + ", no unit marks";
      case Marking.NoLines none -> "recorded without marks: no dose on it can be ordered here";
    };
  }

  SyringesPage withNotice(String text) {
    return new SyringesPage(text, faults, rows, mayChange);
  }

  SyringesPage withFaults(List<String> found) {
    return new SyringesPage(
        notice, new Faults(found.stream().map(Fault::ofForm).toList()), rows, mayChange);
  }
}
