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
 */
public record RunningPage(String title, String words, boolean isRunning, long percent)
    implements NamesCourses {

  private static final int PERCENT = 100;

  static RunningPage of(FitState state) {
    return switch (state) {
      case FitState.Running(FitProgress progress) ->
          new RunningPage(
              "The fit is running",
              progress.doing() + ".",
              true,
              Math.round(PERCENT * progress.part()));
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
    return new RunningPage(title, words, false, 0);
  }

  @Override
  public List<CourseId> namedCourses() {
    return List.of();
  }
}
