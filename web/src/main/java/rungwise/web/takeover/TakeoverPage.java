package rungwise.web.takeover;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Faults;

/**
 * What a man injects elsewhere, as shown.
 *
 * @param basis the number of the last entry that the page shows
 * @param told what was told and opened, each with who wrote it down
 * @param mayTell whether the reader may write down what was told
 * @param opening the form that opens the schedule, where the reader may and there is a part
 * @param notice what was just done; may be empty
 */
public record TakeoverPage(
    CourseView.Man man,
    String coursePath,
    long basis,
    List<Line> told,
    boolean mayTell,
    ToldForm form,
    Optional<OpenForm> opening,
    String notice,
    Faults faults) {

  public TakeoverPage {
    told = List.copyOf(told);
  }

  /**
   * What was told or opened.
   *
   * @param content what a told dose holds; empty for another entry
   */
  public record Line(CourseView.EntryLine entry, String content) {}

  public String path() {
    return coursePath + "/transfer";
  }
}
