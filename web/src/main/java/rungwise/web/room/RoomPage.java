package rungwise.web.room;

import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.room.RoomView;
import rungwise.clinic.room.WatchView;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Faults;

/**
 * The board of everybody under observation.
 *
 * @param notice what was just done; may be empty
 * @param mayRecord whether the reader may close the day
 */
public record RoomPage(RoomView view, String notice, Faults faults, boolean mayRecord)
    implements NamesCourses {

  @Override
  public List<CourseId> namedCourses() {
    return view.men().stream().map(WatchView::course).distinct().toList();
  }
}
