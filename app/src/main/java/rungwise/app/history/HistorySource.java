package rungwise.app.history;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import rungwise.files.history.CourseFile;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.PreparationChoice;
import rungwise.quantities.Reading;

/** A history that a verb was given. */
public sealed interface HistorySource {

  /** How standard input is typed. */
  String OF_INPUT = "-";

  /** What it is called in words. */
  String name();

  /** The same without its folder. */
  String shortName();

  /**
   * Reads each line, or tells every fault.
   *
   * @throws IOException if it is there and cannot be read
   */
  Reading<HistoryFile> history() throws IOException;

  /** The same in the form of a fit. */
  Reading<CourseFile.Found> courses(PreparationChoice choice) throws IOException;

  /**
   * What was typed.
   *
   * @param input what "-" stands for
   */
  static HistorySource of(Path typed, InputStream input) {
    return typed.toString().equals(OF_INPUT) ? new OfInput(input) : new OfFile(typed);
  }

  /** A file, packed if its name ends in ".gz". */
  record OfFile(Path path) implements HistorySource {

    @Override
    public String name() {
      return path.toString();
    }

    @Override
    public String shortName() {
      return String.valueOf(path.getFileName());
    }

    @Override
    public Reading<HistoryFile> history() throws IOException {
      return HistoryFile.read(path);
    }

    @Override
    public Reading<CourseFile.Found> courses(PreparationChoice choice) throws IOException {
      return CourseFile.read(path, choice);
    }
  }

  /** What another program writes, packed if it begins as a packed file does. */
  record OfInput(InputStream in) implements HistorySource {

    @Override
    public String name() {
      return "standard input";
    }

    @Override
    public String shortName() {
      return name();
    }

    @Override
    public Reading<HistoryFile> history() throws IOException {
      return HistoryFile.read(name(), in);
    }

    @Override
    public Reading<CourseFile.Found> courses(PreparationChoice choice) throws IOException {
      return CourseFile.read(name(), in, choice);
    }
  }
}
