package rungwise.clinic.fitting;

import java.util.List;
import java.util.Optional;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.fit.Pass;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.fit.Posteriors;
import rungwise.dosing.predictive.Predicted;
import rungwise.dosing.predictive.PredictiveCheck;
import rungwise.dosing.response.Population;

/** One fit from its start to its end, in memory alone. */
final class FitRun {

  /** The same seed as of the verb, so that both give the same posterior. */
  static final long SEED = 1;

  /**
   * Of all the work, where the part begins and ends; and about how many tasks it has, where that is
   * known.
   */
  private enum Step {
    WAITING("Waiting for a free processor", 0, 0, 1),
    SEARCH("Looking for the parameters that fit best", 0, 0.1, 40),
    POSTERIOR("Drawing what else the reports allow", 0.1, 0.7, 750),
    CHECK("Comparing each report with what the ones before it predict", 0.7, 1, 64);

    private final String words;
    private final double begin;
    private final double end;
    private final double tasks;

    Step(String words, double begin, double end, double tasks) {
      this.words = words;
      this.begin = begin;
      this.end = end;
      this.tasks = tasks;
    }

    FitProgress progress(int done) {
      return new FitProgress(words, begin + (end - begin) * Math.min(1, done / tasks));
    }
  }

  private volatile Optional<FitState> ended = Optional.empty();
  private volatile Step step = Step.WAITING;
  private final WatchedWorkers workers;
  private final FitWorkers opened;

  FitRun(FitWorkers opened) {
    this.opened = opened;
    workers = new WatchedWorkers(opened);
  }

  FitState state() {
    return ended.orElseGet(() -> new FitState.Running(step.progress(workers.done())));
  }

  void stop() {
    workers.stop();
  }

  /**
   * Does all of it on the calling thread.
   *
   * @throws RuntimeException if it cannot be carried through, which is a bug
   */
  void run(ChosenCourses chosen) {
    try (opened) {
      FitResult result = result(chosen);
      ended = Optional.of(workers.isStopped() ? new FitState.Stopped() : new FitState.Done(result));
    } catch (RuntimeException failure) {
      if (!workers.isStopped()) {
        throw failure;
      }
      ended = Optional.of(new FitState.Stopped());
    } finally {
      ended = ended.or(() -> Optional.of(new FitState.Failed()));
    }
  }

  private FitResult result(ChosenCourses chosen) {
    begin(Step.SEARCH);
    String reference = Fitting.mostFrequentGroup(chosen.courses()).orElseThrow();
    Fit fit = Fitting.fit(chosen.courses(), reference, workers, FitRun::ignore);
    Optional<Posterior> posterior = Optional.empty();
    Optional<Predicted> predicted = Optional.empty();
    if (fit.population().isPresent()) {
      begin(Step.POSTERIOR);
      posterior =
          Optional.of(
              Posteriors.of(chosen.courses(), fit, workers, Draws.generator(SEED), FitRun::ignore));
      begin(Step.CHECK);
      predicted = predicted(chosen, posterior.get().sample());
    }
    return new FitResult(chosen, fit, posterior, predicted, SEED);
  }

  /** Empty where no draw of the posterior is a population of the model. */
  private Optional<Predicted> predicted(ChosenCourses chosen, List<Population> draws) {
    return draws.isEmpty()
        ? Optional.empty()
        : Optional.of(PredictiveCheck.of(chosen.courses(), draws, Draws.generator(SEED), workers));
  }

  private void begin(Step next) {
    workers.countAnew();
    step = next;
  }

  private static void ignore(Pass pass) {
    // The workers count what is done.
  }
}
