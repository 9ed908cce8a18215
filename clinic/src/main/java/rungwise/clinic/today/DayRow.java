package rungwise.clinic.today;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.day.Held;
import rungwise.clinic.day.Need;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.sheet.DayView;
import rungwise.clinic.sheet.NowView;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.HowToReach;

/**
 * What the day's list says of a course.
 *
 * @param since since when it waits
 * @param until the first instant at which anything of it may be different
 * @param emergencyAt when an erection that is watched is to be taken for an emergency, if one is
 * @param man his full name; empty where too little of the record can be read
 * @param advice what is proposed, with volume and mark
 * @param because the deciding reason in one line
 * @param sign what is drawn before the answer
 * @param answer whether he may inject now
 * @param reach how he is called, which changes nothing of all else
 */
public record DayRow(
    CourseId course,
    Need need,
    Instant since,
    Instant until,
    Optional<Instant> emergencyAt,
    String man,
    String recordNumber,
    String advice,
    String because,
    NowView.Sign sign,
    String answer,
    Reach reach) {

  /**
   * How he is called.
   *
   * @param telephone the number that is tried first
   * @param tried the tries since he was reached last, if he has to be called again
   */
  public record Reach(
      Optional<Telephone> telephone, Wishes.Partner partner, Optional<Tried> tried) {

    private static final Reach UNKNOWN =
        new Reach(Optional.empty(), Wishes.NOT_ASKED.partner(), Optional.empty());

    private static Reach of(HowToReach how) {
      return new Reach(
          how.numbers().stream().findFirst().map(HowToReach.Known::telephone),
          how.wishes().orElse(Wishes.NOT_ASKED).partner(),
          how.again().map(one -> new Tried(one.tries(), one.last().recordedAt(), one.due())));
    }
  }

  /** He was not reached: how often, when last, and when the next try is due. */
  public record Tried(int tries, Instant last, Instant due) {}

  /** Raised with whatever changes what a row says of the same record. */
  static final int FORM = 2;

  /** How long nobody tries again to read what could not be read. */
  private static final Duration UNREADABLE_FOR = Duration.ofMinutes(10);

  /** A course that was read. */
  static DayRow of(CourseState state, DayView view, Held held) {
    var patient = state.file().patient();
    return new DayRow(
        state.file().id(),
        view.day().need(),
        view.day().since(),
        held.until(),
        held.emergencyAt(),
        patient.fullName(),
        patient.recordNumber(),
        view.advice(),
        view.because(),
        view.now().sign(),
        view.now().sentence(),
        Reach.of(HowToReach.of(state.file())));
  }

  /** A course of which too little can be read to say anything. */
  static DayRow unreadable(CourseId course, Instant now) {
    return new DayRow(
        course,
        Need.RECORD_NOT_SOUND,
        now,
        now.plus(UNREADABLE_FOR),
        Optional.empty(),
        "",
        "",
        "",
        "",
        NowView.Sign.STOPPED,
        "",
        Reach.UNKNOWN);
  }

  public boolean isReadable() {
    return !man.isEmpty();
  }
}
