package rungwise.web.joining;

import java.util.List;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * Other courses of the same man, as shown.
 *
 * @param basis the number of the last entry that the page shows
 * @param follows whether he is treated in another one
 * @param joined those that are joined with this one
 * @param alike those that may be his
 * @param isPrescriber whether the reader may join and part them
 * @param notice what was just done; may be empty
 */
public record JoiningPage(
    CourseView.Man man,
    String coursePath,
    long basis,
    boolean follows,
    List<Other> joined,
    List<Other> alike,
    boolean isPrescriber,
    Field reason,
    String notice,
    Faults faults) {

  public JoiningPage {
    joined = List.copyOf(joined);
    alike = List.copyOf(alike);
  }

  /** Another course: who it is for, in a line. */
  public record Other(String id, String who) {}

  public String path() {
    return coursePath + "/same";
  }
}
