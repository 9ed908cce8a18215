package rungwise.dosing.predictive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Workers;
import rungwise.dosing.predictive.Predicted.Count;
import rungwise.dosing.predictive.Predicted.OfDuration;
import rungwise.dosing.predictive.Predicted.OfVolume;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;

/**
 * Compares what the men of a clinic reported with what the response model would have foreseen.
 *
 * <p>Each report is foreseen from the same man's earlier reports alone, at the dose that he really
 * had. Doses are chosen by earlier responses, so other responses would have led to other doses, and
 * a whole course drawn anew at the doses of the record would be another kind of course. One step
 * ahead nothing is wrong with them: given the past, the dose says nothing more of the man, and
 * reports less their probabilities are differences of a martingale whatever rule chose the doses
 * (Dawid, JRSS A 147 (1984) 278). So counts must agree within chance if the model is right.
 */
public final class PredictiveCheck {

  /** Of more courses every k-th is looked at. */
  public static final int MOST_COURSES = 2000;

  /** So often each report is drawn for each set of parameters, at least. */
  private static final int LEAST_REPLICATIONS = 25;

  /** And so often in all: one replication in twenty are then 25 at each end of a range. */
  private static final int LEAST_IN_ALL = 500;

  /** Parts of the work; more than there are workers. */
  private static final int MOST_TASKS = 64;

  private final List<Course> courses;
  private final List<Population> draws;
  private final int replications;
  private final VolumeBins bins;

  /**
   * A course that has a trial.
   *
   * @param number among all courses, from 0
   */
  private record Course(int number, String group, List<Trial> trials) {}

  private PredictiveCheck(List<Course> courses, List<Population> draws) {
    this.courses = courses;
    this.draws = draws;
    replications = Math.max(LEAST_REPLICATIONS, (LEAST_IN_ALL + draws.size() - 1) / draws.size());
    bins = VolumeBins.of(trials().stream().mapToDouble(Trial::logDose));
  }

  /**
   * Compares; the same for the same state of the generator and any workers.
   *
   * @param draws parameters drawn from their posterior, about 20; one set alone leaves out how
   *     surely they are known
   * @param random gives one seed for each course
   * @throws IllegalArgumentException if there is no draw, or one does not hold a group of a course
   */
  public static Predicted of(
      Courses courses, List<Population> draws, RandomGenerator random, Workers workers) {
    if (draws.isEmpty()) {
      throw new IllegalArgumentException("bug: a check without parameters");
    }
    return new PredictiveCheck(chosen(courses), List.copyOf(draws)).compare(random, workers);
  }

  private static List<Course> chosen(Courses courses) {
    int[] withTrial =
        IntStream.range(0, courses.count()).filter(i -> courses.trialsOf(i) > 0).toArray();
    int each = Math.max(1, (withTrial.length + MOST_COURSES - 1) / MOST_COURSES);
    return IntStream.range(0, withTrial.length)
        .filter(i -> i % each == 0)
        .map(i -> withTrial[i])
        .mapToObj(i -> new Course(i, courses.nameOfGroup(i), courses.listOfTrials(i)))
        .toList();
  }

  private List<Trial> trials() {
    return courses.stream().flatMap(course -> course.trials().stream()).toList();
  }

  private Predicted compare(RandomGenerator random, Workers workers) {
    long[] seeds = random.longs(courses.size()).toArray();
    int tasks = Math.min(MOST_TASKS, courses.size());
    var tallies = new Tally[tasks];
    var surprises = new Surprises(courses.stream().mapToInt(Course::number).toArray());
    workers.share(
        tasks,
        () ->
            task -> {
              var tally = new Tally(bins.count(), draws.size() * replications);
              for (int i = task; i < courses.size(); i += tasks) {
                List<Trial> trials = courses.get(i).trials();
                surprises.take(
                    i, trials, replicate(courses.get(i), new CourseRandom(seeds[i]), tally));
              }
              tallies[task] = tally;
            });
    var all = new Tally(bins.count(), draws.size() * replications);
    Arrays.stream(tallies).forEach(all::add);
    List<OfVolume> volumes = volumes(all);
    List<OfDuration> durations = durations(all);
    return new Predicted(
        courses.size(),
        trials().size(),
        volumes,
        durations,
        all.partMissing(Predicted.misses(volumes, durations).missed()),
        surprises.found());
  }

  /** Replicates a course, and gives what was foreseen of each trial on average over the draws. */
  private List<Ahead> replicate(Course course, RandomGenerator random, Tally tally) {
    var mean = new Ahead[course.trials().size()];
    double part = 1.0 / draws.size();
    for (int draw = 0; draw < draws.size(); draw++) {
      List<Ahead> foreseen = StepsAhead.of(draws.get(draw), course.group(), course.trials());
      for (int i = 0; i < mean.length; i++) {
        replicate(course.trials().get(i), foreseen.get(i), draw * replications, random, tally);
        Ahead share = foreseen.get(i).times(part);
        mean[i] = draw == 0 ? share : mean[i].plus(share);
      }
    }
    return List.of(mean);
  }

  private void replicate(Trial trial, Ahead ahead, int from, RandomGenerator random, Tally tally) {
    int bin = bins.of(trial.logDose());
    for (int i = from; i < from + replications; i++) {
      tally.addGrade(bin, ahead.gradeAt(random.nextDouble()), i);
    }
    if (Reported.isTimed(trial)) {
      for (int i = from; i < from + replications; i++) {
        double drawn = random.nextDouble();
        for (Limit limit : Limit.values()) {
          if (drawn < ahead.longer(limit)) {
            tally.addDuration(limit, i);
          }
        }
      }
    }
  }

  private List<OfVolume> volumes(Tally tally) {
    int[][] reported = new int[bins.count()][Tally.GRADES];
    for (Trial trial : trials()) {
      reported[bins.of(trial.logDose())][Math.max(1, trial.grade().number()) - 1]++;
    }
    var volumes = new ArrayList<OfVolume>();
    for (int bin = 0; bin < reported.length; bin++) {
      var grades = new ArrayList<Count>();
      for (int grade = 1; grade <= Tally.GRADES; grade++) {
        grades.add(new Count(reported[bin][grade - 1], tally.ofGrade(bin, grade)));
      }
      int useful = reported[bin][Tally.GRADES - 1] + reported[bin][Tally.GRADES - 2];
      volumes.add(
          new OfVolume(
              bins.above(bin),
              bins.upTo(bin),
              Arrays.stream(reported[bin]).sum(),
              grades,
              new Count(useful, tally.ofUseful(bin))));
    }
    return volumes;
  }

  private List<OfDuration> durations(Tally tally) {
    List<Lasted> timed = trials().stream().filter(Reported::isTimed).map(Trial::lasted).toList();
    return timed.isEmpty()
        ? List.of()
        : Arrays.stream(Limit.values()).map(limit -> duration(limit, timed, tally)).toList();
  }

  private static OfDuration duration(Limit limit, List<Lasted> timed, Tally tally) {
    return new OfDuration(
        (int) limit.minutes(),
        timed.size(),
        (int) timed.stream().filter(limit::isReached).count(),
        (int) timed.stream().filter(limit::mayBeReached).count(),
        tally.ofDuration(limit));
  }
}
