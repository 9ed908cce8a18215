package rungwise.files.history;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import rungwise.clinic.TableText;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Reads the text of a history file line by line, and goes on after a fault to find them all. */
final class HistoryTable {

  /** So many faults are told, each with its line; more would fill the memory. */
  static final int MOST_FAULTS = 100_000;

  private final String text;
  private final List<Fault> faults = new ArrayList<>();
  private final List<HistoryLine> lines = new ArrayList<>();

  /** The first line of each patient, and of each of his injections. */
  private final Map<String, HistoryLine> firstOf = new LinkedHashMap<>();

  /** Patients of whom a line is wrong. */
  private final Set<String> aside = new HashSet<>();

  /** Whether it is not known of whom a line is that is wrong. */
  private boolean isUnsure = false;

  /** Whether the records end at one that cannot be told apart. */
  private boolean isBroken = false;

  private HistoryTable(String text) {
    this.text = text;
  }

  static Reading<List<HistoryLine>> read(String text) {
    var table = new HistoryTable(text);
    table.readAll();
    return table.faults.isEmpty()
        ? Reading.of(table.lines)
        : new Reading.Refused<>(List.copyOf(table.faults));
  }

  /** The patients of whom every line is right, and what is wrong with the others. */
  static HistorySurvey survey(String text) {
    var table = new HistoryTable(text);
    table.readAll();
    table.lines.forEach(table::askStrength);
    boolean isUnsure = table.isUnsure || table.isBroken || table.faults.size() >= MOST_FAULTS;
    List<HistoryLine> whole =
        isUnsure || (table.aside.isEmpty() && !table.faults.isEmpty())
            ? List.of()
            : table.lines.stream().filter(line -> !table.aside.contains(line.patient())).toList();
    return new HistorySurvey(whole, table.faults, isUnsure ? 0 : table.aside.size());
  }

  private void readAll() {
    try (var records = new Records(text)) {
      Optional<Records.Numbered> header = records.next();
      if (header.isPresent()) {
        readLines(header.get().values(), records);
      } else {
        faults.add(
            Fault.ofForm(
                records
                    .broken()
                    .orElse("line 1: the header is missing: the columns are " + Column.known())));
      }
    } catch (IOException impossible) {
      throw new IllegalStateException("bug: a text in memory cannot be read", impossible);
    }
  }

  private void readLines(CSVRecord header, Records records) {
    Map<Column, Integer> columns = columnsOf(header, faults);
    boolean isUsable = !columns.isEmpty();
    for (var next = records.next(); next.isPresent(); next = records.next()) {
      Records.Numbered record = next.get();
      if (isUsable && faults.size() < MOST_FAULTS) {
        readLine(record.line(), record.values(), columns, header.size(), records.isAtEnd());
      }
    }
    isBroken = records.broken().isPresent();
    records.broken().map(Fault::ofForm).ifPresent(faults::add);
    tellWhatIsLeft();
  }

  private void tellWhatIsLeft() {
    if (faults.size() >= MOST_FAULTS) {
      faults.add(
          Fault.ofForm("There may be more: reading stopped after " + MOST_FAULTS + " faults."));
    }
    if (faults.isEmpty() && lines.isEmpty()) {
      faults.add(Fault.ofForm("line 2: there is no injection in the file: give a line for each"));
    }
  }

  /** Where each column stands; nothing if the header cannot be used, of which the faults tell. */
  static Map<Column, Integer> columnsOf(CSVRecord header, List<Fault> faults) {
    var columns = new EnumMap<Column, Integer>(Column.class);
    for (int i = 0; i < header.size(); i++) {
      String name = header.get(i).strip();
      Optional<Column> column = Column.of(name);
      if (column.isEmpty()) {
        faults.add(
            Fault.ofForm(
                "line 1: "
                    + Cell.quoted(name)
                    + " is not a column of a history file: the columns are "
                    + Column.known()));
      } else if (columns.put(column.get(), i) != null) {
        faults.add(Fault.ofForm("line 1: the column " + name + " stands there twice: keep one"));
      }
    }
    String missing =
        Column.required()
            .filter(column -> !columns.containsKey(column))
            .map(Column::token)
            .collect(Collectors.joining(", "));
    if (!missing.isEmpty()) {
      faults.add(
          Fault.ofForm(
              "line 1: the header lacks " + missing + ": the columns are " + Column.known()));
    }
    return faults.isEmpty() ? columns : Map.of();
  }

  private void readLine(
      long line, CSVRecord record, Map<Column, Integer> columns, int width, boolean isLast) {
    if (isBlank(record)) {
      return;
    }
    if (record.size() != width) {
      isUnsure = true;
      faults.add(
          Fault.ofForm(
              "line "
                  + line
                  + ": there are "
                  + record.size()
                  + " values, and the header names "
                  + width
                  + (isLast ? ": the file may have been cut here" : ": give one value for each")));
      return;
    }
    if (isLast && !text.endsWith("\n") && !record.get(width - 1).isBlank()) {
      isUnsure = true;
      faults.add(
          Fault.ofForm(
              "line "
                  + line
                  + ": the last line does not end, so the file may have been cut in its last value:"
                  + " end it with a line break"));
      return;
    }
    var cells = new LineCells(line, texts(record, columns), faults);
    Optional<HistoryLine> read = cells.read();
    read.ifPresent(this::add);
    if (read.isEmpty()) {
      setAside(texts(record, columns).apply(Column.PATIENT));
    }
  }

  /** What was injected is known by the preparation, or else by a strength. */
  private void askStrength(HistoryLine line) {
    if (line.strength().isEmpty() && line.setting().isEmpty()) {
      faults.add(
          new Fault(
              Column.STRENGTH.token(),
              "line "
                  + line.line()
                  + ": strength: nothing was given, so it is not known: write it, or the time,"
                  + " preparation and barrel"));
      setAside(line.patient());
    }
  }

  static boolean isBlank(CSVRecord record) {
    return record.size() == 1 && record.get(0).isBlank();
  }

  /** What stands in each column of a record that has as many values as the header. */
  static Function<Column, String> texts(CSVRecord record, Map<Column, Integer> columns) {
    return column ->
        Optional.ofNullable(columns.get(column))
            .map(at -> TableText.read(record.get(at).strip()))
            .orElse("");
  }

  private void setAside(String patient) {
    isUnsure |= patient.isEmpty();
    aside.add(patient);
  }

  private void add(HistoryLine read) {
    int before = faults.size();
    HistoryLine first = firstOf.putIfAbsent(read.patient(), read);
    if (first != null && !first.group().equals(read.group())) {
      faults.add(
          new Fault(
              Column.GROUP.token(),
              "line "
                  + read.line()
                  + ": group: "
                  + Cell.quoted(read.group())
                  + " was given, and "
                  + Cell.quoted(first.group())
                  + " in line "
                  + first.line()
                  + " for the same patient: keep one"));
    }
    HistoryLine same = firstOf.putIfAbsent(read.patient() + '\n' + read.injection(), read);
    if (same != null) {
      faults.add(
          new Fault(
              Column.INJECTION.token(),
              "line "
                  + read.line()
                  + ": injection: "
                  + read.injection()
                  + " was given, and it stands in line "
                  + same.line()
                  + " already for the same patient: give each its own number"));
    }
    if (faults.size() > before) {
      setAside(read.patient());
    }
    lines.add(read);
  }
}
