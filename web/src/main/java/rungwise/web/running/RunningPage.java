package rungwise.web.running;

import java.util.Optional;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Faults;

/**
 * The page of whether his treatment goes on.
 *
 * @param basis the number of the last entry that the page shows
 * @param answer that it runs, is paused or has ended
 * @param standing by whom, when and why it was brought to a stand; empty while it runs
 * @param mayPause whether the reader may pause it
 * @param identity who he is and was said to be
 * @param isPrescriber whether the reader may let it go on, end it and open it again
 */
public record RunningPage(
    CourseView.Man man,
    String coursePath,
    long basis,
    Answer answer,
    Optional<String> standing,
    boolean mayPause,
    boolean isPrescriber,
    RunningForms forms,
    IdentityForm identity,
    String notice,
    Faults faults) {

  /** Whether it goes on. */
  public enum Answer {
    RUNS("His treatment goes on"),
    PAUSED("His treatment is paused"),
    ENDED("His treatment has ended");

    private final String words;

    Answer(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public String path() {
    return coursePath + "/running";
  }

  public boolean isPaused() {
    return answer == Answer.PAUSED;
  }

  public boolean isEnded() {
    return answer == Answer.ENDED;
  }
}
