package rungwise.web.today;

import java.util.List;

/**
 * The day's list as shown.
 *
 * @param answer who needs somebody now, in one sentence
 * @param steps what to do first where there is nothing yet
 */
public record TodayPage(String answer, List<Step> steps) {

  /**
   * Something to do first.
   *
   * @param path where it is done; empty if somebody else does it
   */
  public record Step(String sentence, String path, String word) {}

  public TodayPage {
    steps = List.copyOf(steps);
  }
}
