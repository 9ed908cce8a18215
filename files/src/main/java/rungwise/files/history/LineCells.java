package rungwise.files.history;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import rungwise.clinic.OutsideText;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Volume;

/**
 * The values of one line.
 *
 * @param line its number
 * @param texts what stands in each column, without spaces around it; nothing where there is none
 * @param faults shared by the whole file
 */
record LineCells(long line, Function<Column, String> texts, List<Fault> faults) {

  static final int MOST_INJECTIONS = 999_999;
  static final int HIGHEST_GRADE = 4;
  static final Bounds POTENCY = new Bounds(0, /* isLeastAccepted= */ false, 1.2);

  /** From a twentieth of the reference preparation to twenty times it: an assumption. */
  static final Bounds STRENGTH = new Bounds(0.05, /* isLeastAccepted= */ true, 20);

  /** Thirty days: common practice, no source. Late comers after days are real. */
  static final Bounds MINUTES = new Bounds(0, /* isLeastAccepted= */ true, 43_200);

  private static final int LONGEST_NAME = 100;
  private static final Pattern GROUP = Pattern.compile("[a-z_]{1,60}");

  private static final String A_DURATION =
      "write minutes from 0 to 43200 (30 days), such as 45 or 62.5";

  /** The line, if nothing is wrong with it. */
  Optional<HistoryLine> read() {
    int before = faults.size();
    var patient = patient();
    var group = group();
    var injection =
        cell(Column.INJECTION)
            .wholeNumber(MOST_INJECTIONS, "write its number, such as 1 for the first");
    var volume = volume();
    var potency = cell(Column.POTENCY).number(POTENCY, "write a number above 0, at most 1.2");
    var strength = strength();
    var grade = grade();
    var lasted = lasted();
    lasted.ifPresent(one -> grade.ifPresent(found -> checkForModel(found, one)));
    var time = time();
    var preparation = optional(Column.PREPARATION);
    var barrel = optional(Column.BARREL);
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
            strength,
            grade.orElseThrow(),
            lasted.orElseThrow(),
            time,
            preparation,
            barrel));
  }

  private Cell cell(Column column) {
    return new Cell(line, column.token(), texts.apply(column), faults);
  }

  Optional<String> patient() {
    return named(cell(Column.PATIENT), "write what the patient is called");
  }

  /** By the one reader of text from outside: nothing in it that nobody can see. */
  private static Optional<String> named(Cell cell, String accepted) {
    return cell.isEmpty()
        ? cell.refuse(accepted)
        : cell.read(text -> OutsideText.line("this", text, LONGEST_NAME));
  }

  Optional<String> group() {
    return cell(Column.GROUP)
        .like(GROUP, "write small letters and underscores, such as vasculogenic");
  }

  Optional<Volume> volume() {
    Cell cell = cell(Column.VOLUME_ML);
    return cell.read(Volume::parseMillilitres)
        .filter(
            volume ->
                !volume.isMoreThan(Barrels.LARGEST)
                    || cell.refuse(
                            "no syringe holds more than " + Barrels.LARGEST + ": write millilitres")
                        .isPresent());
  }

  /** What stands in a column that may be empty or left out. */
  Optional<String> optional(Column column) {
    Cell cell = cell(column);
    return cell.isEmpty() ? Optional.empty() : named(cell, "write its name, or nothing");
  }

  private Optional<Double> strength() {
    Cell cell = cell(Column.STRENGTH);
    return cell.isEmpty()
        ? Optional.empty()
        : cell.number(
            STRENGTH,
            "write a number from 0.05 to 20, 1 for the reference preparation, or nothing if it is"
                + " not known");
  }

  private Optional<Grade> grade() {
    return cell(Column.GRADE)
        .wholeNumber(HIGHEST_GRADE, "write a grade from 0 to 4")
        .flatMap(Grade::of);
  }

  Optional<Instant> time() {
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
    return cell.number(MINUTES, A_DURATION);
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

  private void checkForModel(Grade grade, Lasted lasted) {
    if (!isForModel(grade, lasted)) {
      cell(Column.DURATION_MIN).refuse("a usable erection lasts longer than 0 minutes");
    }
  }

  /** The model reads the logarithm of a duration at grades 3 and 4. */
  static boolean isForModel(Grade grade, Lasted lasted) {
    return !(grade.isUseful() && lasted instanceof Lasted.Exactly(double minutes) && minutes == 0);
  }
}
