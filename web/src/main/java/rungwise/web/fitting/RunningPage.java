package rungwise.web.fitting;

import java.util.List;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.fitting.FitProgress;
import rungwise.clinic.fitting.FitState;
import rungwise.web.access.NamesCourses;

/**
 * A fit that has no result to look at.
 *
 * @param words what it does, or what became of it
 * @param percent how much is done; 0 where nothing runs
 * @param isStill whether the reader has stopped the page from asking again by itself
 */
public record RunningPage(
    String title, String words, boolean isRunning, long percent, boolean isStill)
    implements NamesCourses {

  private static final int PERCENT = 100;

  static RunningPage of(FitState state, boolean isStill) {
    return switch (state) {
      case FitState.Running(FitProgress progress) ->
          new RunningPage(
              "The fit is running",
              progress.doing() + ".",
              /* isRunning= */ true,
              Math.round(PERCENT * progress.part()),
              isStill);
      case FitState.Stopped stopped -> ended("The fit was stopped", "Nothing of it was kept.");
      case FitState.Failed failed ->
          ended(
              "The fit could not be carried through",
              "Nothing of it was kept. Tell whoever runs the server: the log says why.");
      case FitState.None none -> ended("No fit", "None was run since the server was started.");
      case FitState.Done done -> throw new IllegalArgumentException("bug: a fit that has ended");
    };
  }

  private static RunningPage ended(String title, String words) {
    return new RunningPage(title, words, /* isRunning= */ false, 0, /* isStill= */ false);
  }

  @Override
  public List<CourseId> namedCourses() {
    return List.of();
  }
}
