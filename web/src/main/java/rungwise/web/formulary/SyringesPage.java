package rungwise.web.formulary;

import java.util.List;
import rungwise.clinic.formulary.Formulary;
import rungwise.clinic.people.Account;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.dosing.syringe.Marking;
import rungwise.web.page.Faults;

/** The known types of syringe, and which of them the clinic keeps. */
public record SyringesPage(String notice, Faults faults, List<Row> rows, boolean mayChange) {

  /**
   * One type.
   *
   * @param lines its printed lines; empty for a device that is recorded without marks
   * @param length the smallest length of its scale
   */
  public record Row(
      String words,
      String capacity,
      String lines,
      String numbers,
      String length,
      String source,
      String path,
      boolean isKept) {}

  private record Scale(String lines, String numbers, String length) {}

  public SyringesPage {
    rows = List.copyOf(rows);
  }

  static SyringesPage of(Formulary formulary, Account actor, String notice, Faults faults) {
    List<Barrel> kept = formulary.syringes();
    return new SyringesPage(
        notice,
        faults,
        Barrels.all().stream().map(one -> row(one, kept.contains(one))).toList(),
        PreparationsPage.mayChange(actor));
  }

  /** Whether none is kept, so that no course can be opened. */
  public boolean isEmpty() {
    return rows.stream().noneMatch(Row::isKept);
  }

  private static Row row(Barrel barrel, boolean isKept) {
    Scale scale = scale(barrel.marking());
    return new Row(
        barrel.words(),
        barrel.capacity().toString(),
        scale.lines(),
        scale.numbers(),
        scale.length(),
        Barrels.sourceOf(barrel).words(),
        "/syringes/" + barrel.token(),
        isKept);
  }

  private static Scale scale(Marking marking) {
    return switch (marking) {
      case Marking.UnitLines lines ->
          new Scale(
              "a line every " + lines.graduation(),
              "a unit number every " + lines.numberedEvery(),
              "scale at least " + lines.scaleMillimetres() + " mm");
      case Marking.MillilitreLines lines ->
          new Scale(
              "a line every " + lines.graduation(),
              "a number in mL every " + lines.numberedEvery() + ", no unit marks",
              "scale at least " + lines.scaleMillimetres() + " mm");
      case Marking.NoLines none ->
          new Scale("recorded without marks: not drawn, and no line of it can be ordered", "", "");
    };
  }
}
