package rungwise.web.today;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Need;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reaching.ReachWords;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.clinic.today.DayList.Shown;
import rungwise.clinic.today.DayRow.Reach;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Refreshing;
import rungwise.web.sign.Sign;

/**
 * The day's list as shown.
 *
 * @param answer who needs somebody now, in one sentence
 * @param parts the courses of this page, the reader's own tasks first, within each part the most
 *     worrying first; an erection that is not over is not among them
 * @param open the erections of which nobody has said how they ended, the most urgent first
 * @param unreadable where the courses are of which too little can be read to show anything
 * @param stepsHead what is said above the steps
 * @param steps what to do first where there is nothing yet
 */
public record TodayPage(
    String answer,
    List<OpenErectionView> open,
    List<Part> parts,
    List<String> unreadable,
    String stepsHead,
    List<Step> steps,
    boolean mayOpenCourse,
    Paging paging,
    Refreshing refreshing)
    implements NamesCourses {

  /** Courses of which the same people have to see to something. */
  public record Part(String caption, List<Row> rows) {
    public Part {
      rows = List.copyOf(rows);
    }
  }

  /**
   * Which part of the list it is.
   *
   * @param number of this page, from 1
   * @param of how many pages there are
   * @param courses how many courses are in the list
   * @param beingComputed how many rows do not hold any more and are made anew
   * @param isMadeAnew whether one of them was changed by another program
   */
  public record Paging(int number, int of, int courses, int beingComputed, boolean isMadeAnew) {

    static Paging of(Shown shown) {
      return new Paging(
          shown.number(),
          shown.pages(),
          shown.counts().all(),
          (int) shown.others().stream().filter(one -> !one.isCurrent()).count() == 0
              ? 0
              : shown.counts().due(),
          shown.isMadeAnew());
    }
  }

  /** Whether he may inject now: the sign and the sentence beside it. */
  public record Answer(NowView.Sign sign, String sentence) {}

  /**
   * One course.
   *
   * @param need empty while the row is made anew
   * @param sinceWords since when it waits
   * @param advice what is proposed, with volume and mark
   * @param now whether he may inject now; not for who has no right to the course
   */
  public record Row(
      Optional<Need> need,
      String man,
      String recordNumber,
      CourseId course,
      String sinceWords,
      String advice,
      String because,
      Optional<Answer> now,
      Optional<Called> called) {

    /** A row that holds. */
    Row(
        Need need,
        String man,
        String recordNumber,
        CourseId course,
        String sinceWords,
        String advice,
        String because,
        Answer now,
        Called called) {
      this(
          Optional.of(need),
          man,
          recordNumber,
          course,
          sinceWords,
          advice,
          because,
          Optional.of(now),
          Optional.of(called));
    }

    /** A row that does not hold any more, in the place that it had. */
    static Row beingComputed(CourseId course, String man, String recordNumber) {
      return new Row(
          Optional.empty(),
          man,
          recordNumber,
          course,
          "",
          "",
          "",
          Optional.empty(),
          Optional.empty());
    }

    public String path() {
      return "/courses/" + course;
    }

    /** The shape before what is needed. */
    public Sign sign() {
      return switch (need.orElse(Need.NOTHING)) {
        case EMERGENCY, FIRM, RECORD_NOT_SOUND, SUSPENDED -> Sign.STOP;
        case END_NOT_KNOWN -> Sign.NOT_KNOWN;
        case EMERGENCY_OVER -> Sign.OVER;
        case FLAGGED, DECISION -> Sign.WAIT;
        case SIGNATURE -> Sign.PROPOSED;
        case CALL_AGAIN -> Sign.WAIT;
        case OBSERVATION, SCREENING, TEACHING, EXAMINATION, PAUSED, NOTHING, ENDED -> Sign.NOTE;
      };
    }

    /**
     * For who has no standing right to the course: enough to find the man who calls, and to call
     * again who was not reached.
     */
    Row withoutAdvice() {
      return new Row(
          need,
          man,
          recordNumber,
          course,
          sinceWords,
          "Take access to the course to read it.",
          "",
          Optional.empty(),
          called.filter(one -> one.again().isPresent()));
    }
  }

  /**
   * How he is called.
   *
   * @param again that he was not reached, and when the next try is due
   */
  public record Called(Optional<Telephone> telephone, List<String> wishes, Optional<String> again) {
    public Called {
      wishes = List.copyOf(wishes);
    }

    static Called of(Reach reach, Instant now, ClinicTime time) {
      return new Called(
          reach.telephone(),
          reach
              .telephone()
              .map(one -> ReachWords.wishes(one, reach.partner(), now, time))
              .orElse(List.of()),
          reach
              .tried()
              .map(one -> ReachWords.tried(one.tries(), one.last(), one.due(), now, time)));
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
    parts = List.copyOf(parts);
    unreadable = List.copyOf(unreadable);
    steps = List.copyOf(steps);
  }

  @Override
  public List<CourseId> namedCourses() {
    return Stream.concat(
            open.stream().map(OpenErectionView::course),
            parts.stream().flatMap(part -> part.rows().stream()).map(Row::course))
        .toList();
  }
}
