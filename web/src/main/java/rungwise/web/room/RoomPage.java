package rungwise.web.room;

import java.util.List;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.room.RoomView;
import rungwise.clinic.room.WatchView;
import rungwise.clinic.sheet.OpenErectionView;
import rungwise.web.access.NamesCourses;
import rungwise.web.page.Faults;
import rungwise.web.page.Refreshing;

/**
 * The board of everybody under observation.
 *
 * @param left those who left while it was firm and whom nobody on call has yet
 * @param notKnown of how many men it cannot be read whether they are here or left so
 * @param notice what was just done; may be empty
 * @param mayRecord whether the reader may close the day
 */
public record RoomPage(
    RoomView view,
    List<OpenErectionView> left,
    int notKnown,
    String notice,
    Faults faults,
    boolean mayRecord,
    Refreshing refreshing)
    implements NamesCourses {

  public RoomPage {
    left = List.copyOf(left);
  }

  /** How many left and how many are here, in a sentence. */
  public String answer() {
    String known =
        switch (left.size()) {
          case 0 -> view.answer();
          case 1 -> "1 man left while it was firm: call him now. " + view.answer();
          default -> left.size() + " men left while it was firm: call them now. " + view.answer();
        };
    return switch (notKnown) {
      case 0 -> known;
      case 1 -> "1 man more may be under observation: his record cannot be read. " + known;
      default ->
          notKnown + " men more may be under observation: their records cannot be read. " + known;
    };
  }

  @Override
  public List<CourseId> namedCourses() {
    return Stream.concat(
            left.stream().map(OpenErectionView::course), view.men().stream().map(WatchView::course))
        .distinct()
        .toList();
  }
}
