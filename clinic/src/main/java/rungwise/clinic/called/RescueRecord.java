package rungwise.clinic.called;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.rescue.RescueWord.Given;
import rungwise.clinic.rescue.RescueWord.Measured;
import rungwise.clinic.rescue.RescueWord.Struck;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.urgent.rescue.RescueLog;

/**
 * What was given and measured in every rescue of a course: the hour does not ask in which call. An
 * entry that was struck counts no more and stays to be read.
 *
 * @param counting what counts, in the order of the entries
 */
public record RescueRecord(List<Written<RescueWritten>> counting) {

  public RescueRecord {
    counting = List.copyOf(counting);
  }

  public static RescueRecord of(CourseFile file) {
    return new RescueRecord(
        file.inForce(RescueWritten.class).stream()
            .filter(one -> !(one.fact().word() instanceof Struck))
            .toList());
  }

  /** What was written in one call. */
  public RescueRecord in(EntryId call) {
    return new RescueRecord(
        counting.stream().filter(one -> one.fact().call().equals(call)).toList());
  }

  /** The doses that were given. */
  public List<Given> given() {
    return words(Given.class);
  }

  /** Words of one kind, in the order of the entries. */
  public <T extends RescueWord> List<T> words(Class<T> kind) {
    return counting.stream()
        .map(one -> one.fact().word())
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
  }

  /** The number of the last entry that says that something was given; 0 if none does. */
  public long lastGiven() {
    return counting.stream()
        .filter(one -> one.fact().word() instanceof Given)
        .mapToLong(one -> one.entry().number())
        .max()
        .orElse(0);
  }

  /**
   * The same for the arithmetic.
   *
   * @param inhibitor whether he takes an MAO inhibitor
   * @param secondPerson who has read label and dilution of the dose that is asked for
   */
  public RescueLog log(Answer inhibitor, Optional<String> secondPerson) {
    Stream<Instant> beside =
        words(Given.class).stream().filter(one -> one.before().isPresent()).map(Given::at);
    List<Instant> pressures =
        Stream.concat(beside, words(Measured.class).stream().map(Measured::at)).toList();
    RescueLog.Answer answered =
        switch (inhibitor) {
          case NO -> RescueLog.Answer.NO;
          case YES -> RescueLog.Answer.YES;
          case NOT_KNOWN -> RescueLog.Answer.NOT_KNOWN;
        };
    return new RescueLog(
        given().stream().map(Given::counted).toList(), pressures, answered, secondPerson);
  }
}
