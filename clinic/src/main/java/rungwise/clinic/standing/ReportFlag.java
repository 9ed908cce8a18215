package rungwise.clinic.standing;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.history.Fact;

/**
 * Something about an injection that was kept as it was told and that a prescriber is to look at.
 *
 * @param report the report that counts of it
 * @param facts what it rests on
 * @param since the number of the last entry on which it rests; who saw it after that has seen it
 * @param isSeen whether a prescriber has
 * @param struckBy the entry by which it no longer follows from what counts: it was never seen, so
 *     it is told as it was; empty where it still follows
 */
public record ReportFlag(
    Written<InjectionReported> report,
    Kind kind,
    List<Fact> facts,
    long since,
    boolean isSeen,
    Optional<CourseEntry> struckBy) {

  public ReportFlag {
    facts = List.copyOf(facts);
  }

  /** What it is. Each is kept and none is refused: it has happened. */
  public enum Kind {
    NOT_SIGNED("Nobody had signed a dose for him at that time."),
    OTHER_LABEL("The label of the vial says something else than what was signed for him."),
    MORE_THAN_SIGNED("He drew more than was signed for him."),
    CLINIC_ONLY("He injected at home what was signed for the clinic only."),
    NOT_READY("He injected at home before everything was on record that must come first."),
    TOO_SOON("It was too soon after the one before."),
    THIRD_IN_A_DAY("It was the third within 24 hours."),
    TOO_MANY_IN_A_WEEK("It was one more within 168 hours than the protocol allows."),
    TABLET("He took a tablet for erections within the clinic's hours of it.");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
