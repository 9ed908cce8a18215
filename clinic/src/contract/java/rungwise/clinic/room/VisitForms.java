package rungwise.clinic.room;

import java.util.Set;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.Moment;
import rungwise.clinic.titration.TitrationWorld;

/** The forms of an injection in the clinic, filled in at the world's present minute. */
public final class VisitForms {

  private final TitrationWorld world;

  public VisitForms(TitrationWorld world) {
    this.world = world;
  }

  private String date() {
    return world.room().time().dateText(world.now());
  }

  private String time() {
    return world.room().time().timeText(world.now());
  }

  /** He is injected now. */
  public StartDraft start(String mark) {
    return start(mark, "128", "76", "72");
  }

  public StartDraft start(String mark, String systolic, String diastolic, String pulse) {
    return new StartDraft(
        date(),
        time(),
        Occurrence.NOT_SAID,
        mark,
        "HIS_LEFT",
        "2",
        systolic,
        diastolic,
        pulse,
        /* alreadyGiven= */ false);
  }

  public StartDraft startAt(String date, String time, Occurrence occurrence) {
    return new StartDraft(
        date, time, occurrence, "12", "", "", "", "", "", /* alreadyGiven= */ false);
  }

  /** He was injected in this minute, whatever speaks against it. */
  public StartDraft alreadyGiven(String mark) {
    return new StartDraft(
        date(), time(), Occurrence.NOT_SAID, mark, "", "", "", "", "", /* alreadyGiven= */ true);
  }

  /** It is seen now. */
  public NoteDraft note(Moment moment, String grade) {
    return noteAt(time(), moment, grade);
  }

  public NoteDraft noteAt(String time, Moment moment, String grade) {
    return new NoteDraft(date(), time, Occurrence.NOT_SAID, moment.name(), grade, "", "", "");
  }

  /** He is soft again now. */
  public EndDraft end(String grade, String causes, Set<String> wrong, String pain) {
    return end(/* left= */ false, grade, causes, wrong, pain);
  }

  /** He leaves now and is not soft. */
  public EndDraft left(String grade) {
    return end(/* left= */ true, grade, "none_found", Set.of(), "");
  }

  private EndDraft end(boolean left, String grade, String causes, Set<String> wrong, String pain) {
    return new EndDraft(
        date(),
        time(),
        Occurrence.NOT_SAID,
        left,
        grade,
        causes,
        wrong,
        pain,
        "118",
        "70",
        "80",
        "well");
  }
}
