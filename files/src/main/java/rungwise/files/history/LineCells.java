package rungwise.files.history;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.Volume;

/**
 * The values of one line.
 *
 * @param line its number
 * @param columns where each column stands
 * @param faults shared by the whole file
 */
record LineCells(long line, CSVRecord values, Map<Column, Integer> columns, List<String> faults) {

  private static final int MOST_INJECTIONS = 999_999;
  private static final int HIGHEST_GRADE = 4;
  private static final double MOST_POTENCY = 1.2;
  private static final double LEAST_STRENGTH = 0.001;
  private static final double MOST_STRENGTH = 1000;
  private static final double MOST_MINUTES = 999_999;

  private static final Pattern NAME = Pattern.compile("[^\\p{C}]{1,100}");
  private static final Pattern GROUP = Pattern.compile("[a-z_]{1,60}");

  private static final String A_DURATION = "write minutes from 0, such as 45 or 62.5";

  /** The line, if nothing is wrong with it. */
  Optional<HistoryLine> read() {
    int before = faults.size();
    var patient = cell(Column.PATIENT).like(NAME, "write what the patient is called");
    var group =
        cell(Column.GROUP).like(GROUP, "write small letters and underscores, such as vasculogenic");
    var injection =
        cell(Column.INJECTION)
            .wholeNumber(MOST_INJECTIONS, "write its number, such as 1 for the first");
    var volume = cell(Column.VOLUME_ML).read(Volume::parseMillilitres);
    var potency =
        cell(Column.POTENCY)
            .number(0, /* orEqual= */ false, MOST_POTENCY, "write a number above 0, at most 1.2");
    var strength = strength();
    var grade = grade();
    var lasted = lasted();
    lasted.ifPresent(one -> grade.ifPresent(found -> checkForModel(found, one)));
    var time = time();
    if (faults.size() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new HistoryLine(
            line,
            patient.orElseThrow(),
            group.orElseThrow(),
            injection.orElseThrow(),
            volume.orElseThrow(),
            potency.orElseThrow(),
            strength.orElseThrow(),
            grade.orElseThrow(),
            lasted.orElseThrow(),
            time,
            optional(Column.PREPARATION),
            optional(Column.BARREL)));
  }

  private Cell cell(Column column) {
    String text =
        Optional.ofNullable(columns.get(column)).map(at -> values.get(at).strip()).orElse("");
    return new Cell(line, column.token(), text, faults);
  }

  private Optional<String> optional(Column column) {
    Cell cell = cell(column);
    return cell.isEmpty() ? Optional.empty() : cell.like(NAME, "write its name, or nothing");
  }

  private Optional<Double> strength() {
    return cell(Column.STRENGTH)
        .number(
            LEAST_STRENGTH,
            /* orEqual= */ true,
            MOST_STRENGTH,
            "write a number from 0.001 to 1000, 1 for the reference preparation");
  }

  private Optional<Grade> grade() {
    return cell(Column.GRADE)
        .wholeNumber(HIGHEST_GRADE, "write a grade from 0 to 4")
        .flatMap(Grade::of);
  }

  private Optional<Instant> time() {
    Cell cell = cell(Column.TIME);
    if (cell.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(OffsetDateTime.parse(cell.text()).toInstant());
    } catch (DateTimeException notATime) {
      return cell.refuse(
          "write date, time and offset (ISO 8601), such as 2026-03-01T21:30:00+01:00");
    }
  }

  private Optional<Lasted> lasted() {
    Cell status = cell(Column.DURATION_STATUS);
    Cell minutes = cell(Column.DURATION_MIN);
    Cell upper = cell(Column.DURATION_UPPER_MIN);
    boolean isInterval = status.text().equals("interval");
    if (!isInterval && !upper.isEmpty()) {
      return upper.refuse("leave it empty unless duration_status is interval");
    }
    return switch (status.text()) {
      case "exact" -> duration(minutes).map(Lasted.Exactly::new);
      case "right" -> duration(minutes).map(Lasted.AtLeast::new);
      case "interval" -> interval(minutes, upper);
      case "none" ->
          minutes.isEmpty()
              ? Optional.of(new Lasted.NotRecorded())
              : minutes.refuse("leave it empty, or give a duration_status other than none");
      default -> status.refuse("write exact, right, interval or none");
    };
  }

  private static Optional<Double> duration(Cell cell) {
    return cell.number(0, /* orEqual= */ true, MOST_MINUTES, A_DURATION);
  }

  private static Optional<Lasted> interval(Cell minutes, Cell upper) {
    Optional<Double> from = duration(minutes);
    Optional<Double> before = duration(upper);
    if (from.isEmpty() || before.isEmpty()) {
      return Optional.empty();
    }
    return before.get() > from.get()
        ? Optional.of(new Lasted.Between(from.get(), before.get()))
        : upper.refuse("write more minutes than duration_min");
  }

  /** The model reads the logarithm of a duration at grades 3 and 4. */
  private void checkForModel(Grade grade, Lasted lasted) {
    if (grade.isUseful() && lasted.equals(new Lasted.Exactly(0))) {
      cell(Column.DURATION_MIN).refuse("a usable erection lasts longer than 0 minutes");
    }
  }
}
