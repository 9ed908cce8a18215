package rungwise.web.fitting;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.fitting.FitResult;
import rungwise.clinic.fitting.RareWords;

/**
 * A man whom the fit fits badly.
 *
 * @param course nothing where he has a history from before alone
 * @param rare how many of his grades and times are as rare as 1 in 100
 * @param together how rare all of his reports are together
 */
public record UnlikeMan(String recordNumber, Optional<CourseId> course, int rare, String together) {

  /** The worst first; none where none is as rare as 1 in 100. */
  static List<UnlikeMan> of(FitResult result) {
    return result.predicted().stream()
        .flatMap(predicted -> predicted.surprise().worst().stream())
        .map(
            one -> {
              var man = result.chosen().men().get(one.course());
              return new UnlikeMan(man.recordNumber(), man.course(), one.rare(), RareWords.of(one));
            })
        .toList();
  }

  /** The page of his course; empty where he has none. */
  public String path() {
    return course.map(id -> "/courses/" + id).orElse("");
  }
}
