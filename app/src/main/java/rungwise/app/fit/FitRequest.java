package rungwise.app.fit;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import rungwise.app.history.HistorySource;
import rungwise.clinic.fitting.Draws;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.fit.Pass;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.fit.Posteriors;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.PredictiveCheck;
import rungwise.dosing.response.Population;
import rungwise.files.history.CourseFile;
import rungwise.files.history.PreparationChoice;
import rungwise.quantities.Reading;

/**
 * What was typed after the verb "fit".
 *
 * @param history the courses
 * @param preparations the names in the file of which lines are read, where they were chosen
 * @param reference the reference group, where one was named
 * @param hasPosterior whether the posterior is asked for too
 * @param hasCheck whether what was reported is to be compared with what was foreseen; it asks for
 *     the posterior
 * @param seed of the posterior's draws
 * @param threads how many threads work; what comes out is the same for any number
 */
public record FitRequest(
    HistorySource history,
    Optional<String> preparations,
    Optional<String> reference,
    boolean hasPosterior,
    boolean hasCheck,
    long seed,
    int threads) {

  /**
   * The fit, or everything that is wrong with the request and its file.
   *
   * @param progress is told after each look at the courses
   */
  public Reading<FitAnswer> answer(Consumer<Pass> progress) throws IOException {
    Reading<List<String>> named =
        preparations
            .map(text -> PreparationChoice.read("--preparation", text))
            .orElse(Reading.of(List.of()));
    if (named.found().isEmpty()) {
      return new Reading.Refused<>(named.placed());
    }
    var choice = new PreparationChoice(named.orThrow(), Optional.empty());
    return switch (history.courses(choice)) {
      case Reading.Refused<CourseFile.Found> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<CourseFile.Found> file -> answer(file.value(), progress);
    };
  }

  private Reading<FitAnswer> answer(CourseFile.Found found, Consumer<Pass> progress) {
    Courses courses = found.courses();
    if (courses.count() < Fitting.LEAST_COURSES) {
      return Reading.refused(
          history.name()
              + ": there is "
              + courses.count()
              + " patient in the file: a fit needs 2 patients at least, and many more to"
              + " be of use");
    }
    String group = reference.or(() -> Fitting.mostFrequentGroup(courses)).orElseThrow();
    if (!courses.groups().contains(group)) {
      return Reading.refused(
          "--reference-group: \""
              + group
              + "\" was given, which the file does not hold: it holds "
              + new TreeSet<>(courses.groups()));
    }
    try (var workers = new ThreadWorkers(threads)) {
      return Reading.of(fit(found, group, workers, progress));
    }
  }

  private FitAnswer fit(
      CourseFile.Found found, String group, ThreadWorkers workers, Consumer<Pass> progress) {
    Courses courses = found.courses();
    long start = System.nanoTime();
    Fit fit = Fitting.fit(courses, group, workers, progress);
    double seconds = secondsSince(start);
    start = System.nanoTime();
    Optional<Posterior> posterior =
        (hasPosterior || hasCheck) && fit.population().isPresent()
            ? Optional.of(Posteriors.of(courses, fit, workers, Draws.generator(seed), progress))
            : Optional.empty();
    double posteriorSeconds = secondsSince(start);
    return new FitAnswer(
        history.name(),
        fit,
        seconds,
        found.preparation().orElse("the preparation of strength 1 in " + history.shortName()),
        found.leftOut(),
        posterior,
        posteriorSeconds,
        posterior
            .filter(known -> hasCheck)
            .flatMap(known -> predicted(courses, known.sample(), workers)),
        found.patients());
  }

  /** Empty where no draw of the posterior is a population of the model. */
  private Optional<Predicted> predicted(
      Courses courses, List<Population> draws, ThreadWorkers workers) {
    return draws.isEmpty()
        ? Optional.empty()
        : Optional.of(PredictiveCheck.of(courses, draws, Draws.generator(seed), workers));
  }

  private static double secondsSince(long start) {
    return (double) (System.nanoTime() - start) / TimeUnit.SECONDS.toNanos(1);
  }
}
