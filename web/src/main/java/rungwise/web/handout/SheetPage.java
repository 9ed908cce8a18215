package rungwise.web.handout;

import java.util.List;
import rungwise.clinic.handout.SheetView;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Faults;

/**
 * The page of a man's sheets for home.
 *
 * @param mayMake whether the reader may make one
 * @param made those that were made, the newest first
 */
public record SheetPage(
    CourseView.Man man,
    String coursePath,
    SheetView view,
    boolean mayMake,
    SheetForm form,
    List<MadeLine> made,
    String notice,
    Faults faults) {

  public SheetPage {
    made = List.copyOf(made);
  }

  public String path() {
    return coursePath + "/sheet";
  }
}
