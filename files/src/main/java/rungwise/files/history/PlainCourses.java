package rungwise.files.history;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.Volume;

/**
 * Reads the courses of a history file in which everything is right, many lines a second, and gives
 * up at the first doubt: {@link HistoryTable} tells what is wrong.
 *
 * <p>A line is taken apart among its bytes. A text is checked when it comes for the first time, by
 * the same cell readers, and then known by its bytes. A line that is not plain is read alone by the
 * same readers as any other.
 */
final class PlainCourses {

  /** So many lines are read: they are kept as numbers, in about a gigabyte at the most. */
  static final int MOST_LINES = 20_000_000;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private static final int NOT_SEEN = -2;
  private static final int NOT_NAMED = -1;

  private static final int EXACT = 0;
  private static final int INTERVAL = 2;
  private static final int NONE = 3;

  /** In the order of the three above, "right" between them. */
  private static final TextTable STATUSES = statuses();

  private final ByteLines lines;
  private final Map<Column, Integer> columns;
  private final LineSplit split;

  private final TextTable patients = new TextTable();
  private final TextTable groups = new TextTable();
  private final TextTable volumes = new TextTable();
  private final List<Volume> volumeOf = new ArrayList<>();
  private final TextTable names = new TextTable();
  private final CourseRows rows = new CourseRows();
  private final PreparationChoice choice;

  /** The number of the last line's preparation among the names. */
  private int preparation = NOT_SEEN;

  /** Whether that is the preparation of strength 1. */
  private boolean isItself = true;

  /** What the file calls the preparation of strength 1, while every line of it has that. */
  private Optional<String> itself = Optional.empty();

  private boolean isAlwaysOne = true;
  private int lastPatient = -1;

  private PlainCourses(
      ByteLines lines, Map<Column, Integer> columns, int width, PreparationChoice choice) {
    this.lines = lines;
    this.columns = columns;
    this.choice = choice;
    split = new LineSplit(width);
  }

  /**
   * The file as it was read, or nothing where there may be anything wrong.
   *
   * @param mostLines how many lines the stream may have below its header
   * @param choice of the lines that are read
   */
  static Optional<PlainCourses> read(InputStream in, int mostLines, PreparationChoice choice)
      throws IOException {
    var lines = new ByteLines(in);
    Optional<CSVRecord> header = lines.next() ? record(lines, BYTE_ORDER_MARK) : Optional.empty();
    if (header.isEmpty()) {
      return Optional.empty();
    }
    Map<Column, Integer> columns = HistoryTable.columnsOf(header.get(), new ArrayList<>());
    if (columns.isEmpty()) {
      return Optional.empty();
    }
    var courses = new PlainCourses(lines, new EnumMap<>(columns), header.get().size(), choice);
    for (int read = 0; lines.next(); read++) {
      if (read >= mostLines || !courses.take()) {
        return Optional.empty();
      }
    }
    courses.rows.sort();
    return courses.rows.areRight() ? Optional.of(courses) : Optional.empty();
  }

  /** What the file calls the preparation of strength 1, if it says so. */
  Optional<String> preparation() {
    return itself.filter(name -> isAlwaysOne);
  }

  /** What the file calls a patient, by his number from 0. */
  String patient(int number) {
    return patients.text(number);
  }

  int courses() {
    return rows.patients();
  }

  int trials() {
    return rows.count();
  }

  /** Tells of all courses in their order. */
  void tell(CourseTaker taker) {
    rows.tell(groups::text, taker);
  }

  private static TextTable statuses() {
    var table = new TextTable();
    for (String status : List.of("exact", "right", "interval", "none")) {
      numberOf(table, status);
    }
    return table;
  }

  /** The line as the one record it is, if it is one. */
  private static Optional<CSVRecord> record(ByteLines lines, String mark) {
    Optional<String> text = text(lines.bytes(), lines.start(), lines.end());
    if (text.isEmpty() || !lines.isEnded() || lines.isTooLong()) {
      return Optional.empty();
    }
    String line = text.get().startsWith(mark) ? text.get().substring(mark.length()) : text.get();
    try (var parser = CSVParser.parse(new StringReader(line + '\n'), Records.FORMAT)) {
      List<CSVRecord> records = parser.getRecords();
      return records.size() == 1 ? Optional.of(records.getFirst()) : Optional.empty();
    } catch (UncheckedIOException | IOException open) {
      return Optional.empty();
    }
  }

  private static Optional<String> text(byte[] bytes, int from, int to) {
    try {
      ByteBuffer part = ByteBuffer.wrap(bytes, from, to - from);
      return Optional.of(StandardCharsets.UTF_8.newDecoder().decode(part).toString());
    } catch (CharacterCodingException notText) {
      return Optional.empty();
    }
  }

  /** Takes the line; whether there was no doubt. */
  private boolean take() {
    if (lines.isEnded() && lines.start() == lines.end()) {
      return true;
    }
    if (lines.isTooLong() || !split.split(lines.bytes(), lines.start(), lines.end())) {
      return takeAlone();
    }
    int last = columns.size() - 1;
    boolean mayBeCut = !lines.isEnded() && split.from(last) < split.to(last);
    return !mayBeCut && areNamesRight() && takePlain();
  }

  /** Reads a line that is not plain with the readers of the other lines. */
  private boolean takeAlone() {
    Optional<CSVRecord> record = record(lines, "");
    if (record.isEmpty()) {
      return false;
    }
    if (HistoryTable.isBlank(record.get())) {
      return true;
    }
    if (record.get().size() != columns.size()) {
      return false;
    }
    return new LineCells(0, HistoryTable.texts(record.get(), columns), new ArrayList<>())
        .read()
        .filter(this::takeRead)
        .isPresent();
  }

  private boolean takeRead(HistoryLine line) {
    int patient = numberOf(patients, line.patient());
    int named = line.preparation().map(name -> numberOf(names, name)).orElse(NOT_NAMED);
    if (line.strength().isEmpty()
        || !isRead(named)
        || !rows.isOf(patient, numberOf(groups, line.group()))) {
      return false;
    }
    double strength = line.strength().get();
    isAlwaysOne &= !isItself || strength == 1;
    var given = new Given(line.volume(), line.potency(), strength);
    rows.add(patient, line.injection(), given.logDose(), line.grade(), line.lasted());
    return true;
  }

  /** Whether lines of that preparation are read, as the others before; a doubt if they are not. */
  private boolean isRead(int named) {
    if (named == preparation) {
      return true;
    }
    Optional<String> name = named < 0 ? Optional.empty() : Optional.of(names.text(named));
    if ((preparation != NOT_SEEN && choice.named().isEmpty()) || !choice.isChosen(name)) {
      return false;
    }
    preparation = named;
    isItself =
        name.isPresent()
            && (choice.named().isEmpty() || name.get().equals(choice.named().getFirst()));
    itself = isItself ? name : itself;
    return true;
  }

  /** The number of the preparation that the line names. */
  private int named() {
    int cell = cell(Column.PREPARATION);
    return isEmpty(Column.PREPARATION)
        ? NOT_NAMED
        : names.find(lines.bytes(), split.from(cell), split.to(cell));
  }

  private static int numberOf(TextTable table, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    int number = table.find(bytes, 0, bytes.length);
    return number < 0 ? table.add(bytes, 0, bytes.length) : number;
  }

  /** Of the columns that may be left out. */
  private boolean areNamesRight() {
    return isNameRight(Column.PREPARATION)
        && isNameRight(Column.BARREL)
        && (isEmpty(Column.TIME) || isAccepted(Column.TIME, cell -> cell.time().isPresent()));
  }

  private boolean isNameRight(Column column) {
    return isEmpty(column) || known(names, column, cell -> cell.optional(column).isPresent()) >= 0;
  }

  private boolean takePlain() {
    int patient = patient();
    int group = known(groups, Column.GROUP, cell -> cell.group().isPresent());
    int injection = whole(Column.INJECTION, LineCells.MOST_INJECTIONS);
    int volume = known(volumes, Column.VOLUME_ML, this::readVolume);
    double potency = number(Column.POTENCY, LineCells.POTENCY);
    double strength = number(Column.STRENGTH, LineCells.STRENGTH);
    int grade = whole(Column.GRADE, LineCells.HIGHEST_GRADE);
    boolean isRight =
        patient >= 0
            && group >= 0
            && injection >= 0
            && volume >= 0
            && !Double.isNaN(potency)
            && !Double.isNaN(strength)
            && grade >= 0
            && isRead(named())
            && rows.isOf(patient, group);
    if (!isRight) {
      return false;
    }
    isAlwaysOne &= !isItself || strength == 1;
    double dose = new Given(volumeOf.get(volume), potency, strength).logDose();
    return takeReport(patient, injection, dose, Grade.of(grade).orElseThrow());
  }

  private boolean takeReport(int patient, int injection, double dose, Grade grade) {
    Optional<Lasted> lasted = lasted().filter(one -> LineCells.isForModel(grade, one));
    lasted.ifPresent(one -> rows.add(patient, injection, dose, grade, one));
    return lasted.isPresent();
  }

  private Optional<Lasted> lasted() {
    int cell = cell(Column.DURATION_STATUS);
    int status = STATUSES.find(lines.bytes(), split.from(cell), split.to(cell));
    double minutes = number(Column.DURATION_MIN, LineCells.MINUTES);
    if (status == INTERVAL) {
      double upper = number(Column.DURATION_UPPER_MIN, LineCells.MINUTES);
      return upper > minutes ? Optional.of(new Lasted.Between(minutes, upper)) : Optional.empty();
    }
    if (status < 0 || !isEmpty(Column.DURATION_UPPER_MIN)) {
      return Optional.empty();
    }
    if (status == NONE) {
      return isEmpty(Column.DURATION_MIN)
          ? Optional.of(new Lasted.NotRecorded())
          : Optional.empty();
    }
    if (Double.isNaN(minutes)) {
      return Optional.empty();
    }
    return Optional.of(status == EXACT ? new Lasted.Exactly(minutes) : new Lasted.AtLeast(minutes));
  }

  /** Where a column stands; -1 where it does not. */
  private int cell(Column column) {
    return columns.getOrDefault(column, -1);
  }

  private boolean isEmpty(Column column) {
    int cell = cell(column);
    return cell < 0 || split.from(cell) == split.to(cell);
  }

  /** The whole number in a column; -1 where there is none that is accepted. */
  private int whole(Column column, int most) {
    int cell = cell(column);
    int number = PlainNumber.whole(lines.bytes(), split.from(cell), split.to(cell));
    return number <= most ? number : -1;
  }

  /** The number in a column; NaN where there is none that is accepted. */
  private double number(Column column, Bounds bounds) {
    int cell = cell(column);
    double number = PlainNumber.decimal(lines.bytes(), split.from(cell), split.to(cell));
    return bounds.hold(number) ? number : Double.NaN;
  }

  /** The number of the patient, who is the one of the line before as a rule; -1 if refused. */
  private int patient() {
    int cell = cell(Column.PATIENT);
    int from = split.from(cell);
    int to = split.to(cell);
    if (lastPatient < 0 || !patients.is(lastPatient, lines.bytes(), from, to)) {
      lastPatient = known(patients, Column.PATIENT, one -> one.patient().isPresent());
    }
    return lastPatient;
  }

  /** The number of a text that was accepted before or is now; -1 if it is refused. */
  private int known(TextTable table, Column column, Predicate<LineCells> reader) {
    int cell = cell(column);
    int from = split.from(cell);
    int to = split.to(cell);
    int number = table.find(lines.bytes(), from, to);
    if (number >= 0) {
      return number;
    }
    return isAccepted(column, reader) ? table.add(lines.bytes(), from, to) : -1;
  }

  private boolean readVolume(LineCells cell) {
    Optional<Volume> volume = cell.volume();
    volume.ifPresent(volumeOf::add);
    return volume.isPresent();
  }

  /** Asks the reader of a cell about the one that stands there, if no spaces are around it. */
  private boolean isAccepted(Column column, Predicate<LineCells> reader) {
    int cell = cell(column);
    return text(lines.bytes(), split.from(cell), split.to(cell))
        .filter(text -> text.equals(text.strip()))
        .filter(text -> reader.test(new LineCells(0, any -> text, new ArrayList<>())))
        .isPresent();
  }
}
