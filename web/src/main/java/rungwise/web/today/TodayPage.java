package rungwise.web.today;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Need;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.web.access.NamesCourses;
import rungwise.web.sign.Sign;

/**
 * The day's list as shown.
 *
 * @param answer who needs somebody now, in one sentence
 * @param rows every course, the most worrying first; an erection that is not over is not among them
 * @param open the erections of which nobody has said how they ended, the most urgent first
 * @param unreadable where the courses are of which too little can be read to show anything
 * @param stepsHead what is said above the steps
 * @param steps what to do first where there is nothing yet
 */
public record TodayPage(
    String answer,
    List<OpenErectionView> open,
    List<Row> rows,
    List<String> unreadable,
    String stepsHead,
    List<Step> steps,
    boolean mayOpenCourse)
    implements NamesCourses {

  /**
   * One course.
   *
   * @param open the erection of which nobody has said how it ended
   * @param since since when it waits
   * @param sinceWords the same for a reader
   * @param advice what is proposed, with volume and mark
   * @param now whether he may inject now; not for who has no right to the course
   */
  public record Row(
      Need need,
      Optional<OpenErectionView> open,
      String man,
      String recordNumber,
      CourseId course,
      Instant since,
      String sinceWords,
      String advice,
      String because,
      Optional<NowView> now) {

    public String path() {
      return "/courses/" + course;
    }

    /** The shape before what is needed. */
    public Sign sign() {
      return switch (need) {
        case EMERGENCY, FIRM, RECORD_NOT_SOUND, SUSPENDED -> Sign.STOP;
        case END_NOT_KNOWN -> Sign.NOT_KNOWN;
        case EMERGENCY_OVER -> Sign.OVER;
        case FLAGGED, DECISION -> Sign.WAIT;
        case SIGNATURE -> Sign.PROPOSED;
        case OBSERVATION, EXAMINATION, NOTHING -> Sign.NOTE;
      };
    }

    /** For who has no standing right to the course: enough to find the man who calls. */
    Row withoutAdvice() {
      return new Row(
          need,
          open.map(OpenErectionView::withoutAbout),
          man,
          recordNumber,
          course,
          since,
          sinceWords,
          "Take access to the course to read it.",
          "",
          Optional.empty());
    }
  }

  /**
   * Something to do first.
   *
   * @param path where it is done; empty if somebody else does it
   */
  public record Step(String sentence, String path, String word) {}

  public TodayPage {
    open = List.copyOf(open);
    rows = List.copyOf(rows);
    unreadable = List.copyOf(unreadable);
    steps = List.copyOf(steps);
  }

  @Override
  public List<CourseId> namedCourses() {
    return Stream.concat(
            open.stream().map(OpenErectionView::course), rows.stream().map(Row::course))
        .toList();
  }
}
