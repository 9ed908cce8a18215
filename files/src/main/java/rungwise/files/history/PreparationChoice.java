package rungwise.files.history;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.dosing.response.Given;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * Which lines of a history the response model reads: those of one preparation, or of strengths of
 * it that are chosen by name. Between preparations that have nothing to do with each other there is
 * no strength, so lines of another one are refused, or left out and counted.
 *
 * @param named the names that were chosen, the one of strength 1 first; empty if none were
 * @param reference what a population calls the preparation of strength 1, where there is one
 */
public record PreparationChoice(List<String> named, Optional<String> reference) {

  public PreparationChoice {
    named = List.copyOf(named);
  }

  /**
   * The lines that are read.
   *
   * @param preparation what the file calls that of strength 1, if it names one
   * @param leftOut how many lines are of a preparation that was not chosen
   */
  public record Chosen(List<Line> lines, Optional<String> preparation, int leftOut) {

    public Chosen {
      lines = List.copyOf(lines);
    }

    /** The injections of each patient by number; the patients in the order of the file. */
    public Map<String, List<Line>> patients() {
      var patients = new LinkedHashMap<String, List<Line>>();
      for (Line line : lines) {
        patients.computeIfAbsent(line.said().patient(), name -> new ArrayList<>()).add(line);
      }
      patients
          .values()
          .forEach(own -> own.sort(Comparator.comparingInt(line -> line.said().injection())));
      return patients;
    }
  }

  /** A line with its strength relative to the preparation of strength 1. */
  public record Line(HistoryLine said, double strength) {

    /** What was injected. */
    public Given given() {
      return new Given(said.volume(), said.potency(), strength);
    }
  }

  /** Names with commas between, as they are typed. */
  public static Reading<List<String>> read(String option, String text) {
    List<String> names = Stream.of(text.split(",", -1)).map(String::strip).toList();
    return names.stream().anyMatch(String::isEmpty)
        ? Reading.refused(
            option
                + ": \""
                + text
                + "\" was given: write the names as the file has them, with commas between, the"
                + " one of strength 1 first")
        : Reading.of(names);
  }

  /** The lines to read, or what is wrong with each of the others. */
  public Reading<Chosen> of(HistoryFile file) {
    List<HistoryLine> chosen = file.lines().stream().filter(this::isChosen).toList();
    if (chosen.isEmpty()) {
      return Reading.refused(
          "--preparation: no line is of "
              + list(named)
              + ": the file names "
              + list(namesOf(file)));
    }
    Optional<String> expected = reference.or(() -> one(chosen));
    var faults = new ArrayList<Fault>();
    var lines = new ArrayList<Line>();
    for (HistoryLine line : chosen) {
      Optional<Fault> wrong = wrong(line, expected);
      wrong.ifPresent(faults::add);
      if (wrong.isEmpty()) {
        strength(line, expected, faults).ifPresent(lines::add);
      }
      if (faults.size() >= HistoryTable.MOST_FAULTS) {
        break;
      }
    }
    return faults.isEmpty()
        ? Reading.of(new Chosen(lines, named(lines, expected), file.lines().size() - chosen.size()))
        : new Reading.Refused<>(List.copyOf(faults));
  }

  /** Whether a line of that preparation is read; of none where the file does not say. */
  boolean isChosen(Optional<String> preparation) {
    return named.isEmpty() || preparation.filter(named::contains).isPresent();
  }

  private boolean isChosen(HistoryLine line) {
    return isChosen(line.preparation());
  }

  /** The first that was chosen, or the first that is named. */
  private Optional<String> one(List<HistoryLine> lines) {
    return named.isEmpty()
        ? lines.stream().flatMap(line -> line.preparation().stream()).findFirst()
        : Optional.of(named.getFirst());
  }

  private Optional<Fault> wrong(HistoryLine line, Optional<String> expected) {
    boolean isOther =
        named.isEmpty()
            && (line.preparation().isPresent() || reference.isEmpty())
            && !line.preparation().equals(expected);
    return isOther
        ? Optional.of(
            new Fault(
                Column.PREPARATION.token(),
                "line "
                    + line.line()
                    + ": preparation: "
                    + line.preparation().map(Cell::quoted).orElse("nothing")
                    + " was given, and the model is asked about "
                    + Cell.quoted(expected.orElse(""))
                    + ": choose the lines to read by --preparation"))
        : Optional.empty();
  }

  /** Of itself every preparation has strength 1; of another it is known only where it is said. */
  private Optional<Line> strength(HistoryLine line, Optional<String> expected, List<Fault> faults) {
    boolean isItself = line.preparation().isPresent() && line.preparation().equals(expected);
    Optional<Double> strength =
        line.strength().or(() -> isItself ? Optional.of(1.0) : Optional.empty());
    if (strength.isEmpty()) {
      faults.add(
          new Fault(
              Column.STRENGTH.token(),
              "line "
                  + line.line()
                  + ": strength: nothing was given, so it is not known: write it relative to "
                  + expected.map(Cell::quoted).orElse("the preparation of strength 1")
                  + ", or leave the line out by --preparation"));
    } else if (isItself && reference.isPresent() && strength.get() != 1) {
      faults.add(
          new Fault(
              Column.STRENGTH.token(),
              "line "
                  + line.line()
                  + ": strength: "
                  + strength.get()
                  + " was given, and the preparation is that of the population:"
                  + " its strength is 1"));
      return Optional.empty();
    }
    return strength.map(known -> new Line(line, known));
  }

  /** What has strength 1, if the file says so of the preparation that is expected. */
  private static Optional<String> named(List<Line> lines, Optional<String> expected) {
    return expected.filter(
        name ->
            lines.stream()
                .filter(line -> line.said().preparation().equals(Optional.of(name)))
                .map(Line::strength)
                .collect(Collectors.toSet())
                .equals(Set.of(1.0)));
  }

  private static LinkedHashSet<String> namesOf(HistoryFile file) {
    return file.lines().stream()
        .map(line -> line.preparation().orElse("none"))
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static String list(Iterable<String> names) {
    return String.join(", ", names);
  }
}
