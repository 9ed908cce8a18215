package rungwise.dosing.predictive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.fit.Doubt;
import rungwise.dosing.fit.Fit;
import rungwise.dosing.fit.Fitting;
import rungwise.dosing.fit.Posterior;
import rungwise.dosing.fit.Posteriors;
import rungwise.dosing.fit.Workers;
import rungwise.dosing.history.Grade;
import rungwise.dosing.predictive.Predicted.Count;
import rungwise.dosing.predictive.Predicted.OfDuration;
import rungwise.dosing.predictive.Predicted.OfVolume;
import rungwise.dosing.predictive.Predicted.Range;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Trial;
import rungwise.quantities.Volume;

final class PredictiveCheckTest {

  private static final Lasted NONE = new Lasted.NotRecorded();

  static final Population TRUTH =
      new Population(
          0.75,
          Map.of("vasculogenic", 0.0, "spinal_cord", -0.7),
          0.8,
          2.2,
          -1.6,
          1.9,
          Math.log(45),
          0.55,
          0.5);

  private static final Population TWICE_AS_LONG =
      new Population(0.75, TRUTH.gammas(), 0.8, 2.2, -1.6, 1.9, Math.log(90), 0.55, 0.5);

  private static final Population HALF_AS_STEEP =
      new Population(0.75, TRUTH.gammas(), 0.8, 1.1, -1.6, 1.9, Math.log(45), 0.55, 0.5);

  private static Predicted check(Courses courses, Population... draws) {
    return PredictiveCheck.of(courses, List.of(draws), new Random(5), Workers.alone());
  }

  /**
   * In 200 worlds each. A range holds nine in ten counts at least, as counts are whole numbers, and
   * strictly inside it lie nine in ten at most. A binomial variable of 200 with probability 0.9 is
   * below 163 or above 194 with probability 0.0001 at each side (scipy.stats.binom 1.17.1).
   */
  @Test
  void ranges_hold_nine_in_ten_reports_of_the_model_whatever_rule_chose_the_doses() {
    int worlds = 200;
    var held = new LinkedHashMap<String, Integer>();
    var inside = new LinkedHashMap<String, Integer>();
    for (int world = 0; world < worlds; world++) {
      Predicted found = check(new AdaptiveWorld(world, TRUTH).courses(60, 5), TRUTH);
      for (var one : counts(found).entrySet()) {
        Range range = one.getValue().expected();
        int reported = one.getValue().reported();
        held.merge(one.getKey(), one.getValue().isWithin() ? 1 : 0, Integer::sum);
        inside.merge(
            one.getKey(), range.low() < reported && reported < range.high() ? 1 : 0, Integer::sum);
      }
    }

    assertThat(held).hasSize(9);
    assertThat(held.values()).allSatisfy(count -> assertThat(count).isGreaterThanOrEqualTo(163));
    assertThat(inside.values()).allSatisfy(count -> assertThat(count).isLessThanOrEqualTo(194));
  }

  /** Of the lowest and the highest volumes, which every world has, and of durations. */
  private static Map<String, Count> counts(Predicted found) {
    var counts = new LinkedHashMap<String, Count>();
    for (OfVolume volume : List.of(found.volumes().getFirst(), found.volumes().getLast())) {
      String name = volume.equals(found.volumes().getFirst()) ? "low " : "high ";
      counts.put(name + "grade 1", volume.grades().getFirst());
      counts.put(name + "grade 2", volume.grades().get(1));
      counts.put(name + "grade 4", volume.grades().getLast());
      counts.put(name + "useful", volume.useful());
    }
    for (OfDuration duration : found.durations().subList(0, 1)) {
      counts.put(
          duration.minutes() + " min", new Count(duration.reportedSurely(), duration.expected()));
    }
    return counts;
  }

  private static Courses world() {
    return new AdaptiveWorld(1, TRUTH).courses(300, 8);
  }

  /**
   * What was seen of some worlds.
   *
   * @param grades the part of all counts of grades that lie outside
   * @param durations how many worlds have the count of each limit outside
   */
  private record Outside(double grades, Map<Integer, Integer> durations) {}

  /** Of ten worlds. */
  private static Outside outside(Population world, Population asked) {
    var durations = new TreeMap<Integer, Integer>();
    double counts = 0;
    double outside = 0;
    for (int seed = 0; seed < 10; seed++) {
      Predicted found = check(new AdaptiveWorld(seed, world).courses(300, 8), asked);
      for (OfVolume volume : found.volumes()) {
        counts += volume.grades().size();
        outside += volume.grades().stream().filter(grade -> !grade.isWithin()).count();
      }
      for (OfDuration duration : found.durations()) {
        durations.merge(duration.minutes(), duration.isWithin() ? 0 : 1, Integer::sum);
      }
    }
    return new Outside(outside / counts, durations);
  }

  /**
   * Of right parameters one count in ten lies outside, or fewer because counts are whole numbers: 7
   * in 100 were seen. A binomial variable of 10 with probability 0.1 is above 5 with probability
   * 0.00015.
   */
  @Test
  void durations_twice_as_long_are_outside() {
    Outside right = outside(TRUTH, TRUTH);
    Outside wrong = outside(TRUTH, TWICE_AS_LONG);

    assertThat(right.grades()).isLessThan(0.1);
    assertThat(right.durations().values()).hasSize(3).allMatch(worlds -> worlds <= 5);
    assertThat(wrong.durations()).isEqualTo(Map.of(60, 10, 120, 10, 240, 10));
    assertThat(check(world(), TWICE_AS_LONG).misses().missed()).isPositive();
  }

  /** 38 in 100 were seen outside. */
  @Test
  void grades_half_as_steep_are_outside() {
    Outside right = outside(HALF_AS_STEEP, HALF_AS_STEEP);
    Outside wrong = outside(HALF_AS_STEEP, TRUTH);

    assertThat(right.grades()).isLessThan(0.1);
    assertThat(right.durations().values()).hasSize(3).allMatch(worlds -> worlds <= 5);
    assertThat(wrong.grades()).isGreaterThan(0.3);
  }

  /**
   * Why each report is foreseen from the earlier ones: men who need more are given more, so from
   * the group alone the right parameters foresee far more useful responses at high volumes.
   */
  @Test
  void without_the_earlier_reports_the_right_parameters_would_look_wrong() {
    Courses courses = world();
    Courses.Builder alone = Courses.builder();
    for (int course = 0; course < courses.count(); course++) {
      String group = courses.nameOfGroup(course);
      courses
          .listOfTrials(course)
          .forEach(one -> alone.course(group).trial(one.logDose(), one.grade(), one.lasted()));
    }

    OfVolume highest = check(alone.build(), TRUTH).volumes().getLast();

    assertThat(highest.useful().reported()).isLessThan((int) highest.useful().expected().low());
    assertThat(check(courses, TRUTH).volumes().getLast().useful().isWithin()).isTrue();
  }

  /** The whole way: courses, fit, draws of the posterior, check. */
  @Test
  void a_fit_foresees_the_courses_it_was_made_from_within_chance() {
    Courses courses = new AdaptiveWorld(2, TRUTH).courses(120, 6);
    Fit fit = Fitting.fit(courses, "vasculogenic", Workers.alone(), pass -> {});
    Posterior posterior = Posteriors.of(courses, fit, Workers.alone(), new Random(7), pass -> {});

    Predicted found =
        PredictiveCheck.of(courses, posterior.sample(), new Random(5), Workers.alone());

    assertThat(found.injections()).isEqualTo(720);
    assertThat(found.durations()).hasSize(3).allMatch(OfDuration::isWithin);
    assertThat(found.volumes().stream().filter(volume -> !volume.useful().isWithin()).count())
        .isLessThanOrEqualTo(1);
  }

  @Test
  void any_workers_find_the_same() {
    Predicted alone = check(world(), TRUTH, TWICE_AS_LONG);

    assertThat(
            PredictiveCheck.of(
                world(), List.of(TRUTH, TWICE_AS_LONG), new Random(5), TwoThreads::share))
        .isEqualTo(alone);
    assertThat(
            PredictiveCheck.of(
                world(), List.of(TRUTH, TWICE_AS_LONG), new Random(6), Workers.alone()))
        .isNotEqualTo(alone);
  }

  @Test
  void volumes_are_joined_until_a_bin_holds_twenty() {
    Courses.Builder builder = Courses.builder();
    addAt(builder, 0.05, 19);
    addAt(builder, 0.1, 1);
    addAt(builder, 0.101, 5);
    addAt(builder, 0.2, 16);
    addAt(builder, 0.3, 19);

    Predicted found = check(builder.build(), TRUTH);

    assertThat(found.courses()).isEqualTo(5);
    assertThat(found.injections()).isEqualTo(60);
    assertThat(found.volumes().stream().map(OfVolume::above))
        .containsExactly(Volume.ZERO, Volume.ofMicrolitres(100));
    assertThat(found.volumes().stream().map(OfVolume::upTo))
        .containsExactly(Volume.ofMicrolitres(100), Volume.ofMicrolitres(300));
    assertThat(found.volumes().stream().map(OfVolume::injections)).containsExactly(20, 40);
    assertThat(found.volumes().getFirst().grades().stream().map(Count::reported))
        .containsExactly(20, 0, 0, 0);
    assertThat(found.durations()).isEmpty();
  }

  private static void addAt(Courses.Builder builder, double millilitres, int count) {
    builder.course("vasculogenic");
    for (int i = 0; i < count; i++) {
      builder.trial(Math.log(millilitres / 0.1), Grade.NONE, NONE);
    }
  }

  @Test
  void courses_without_injections_say_nothing_and_few_make_one_bin() {
    Courses empty = Courses.builder().course("vasculogenic").course("spinal_cord").build();
    Courses.Builder one = Courses.builder().course("vasculogenic");
    addAt(one, 0.1, 1);

    assertThat(check(empty, TRUTH))
        .isEqualTo(new Predicted(0, 0, List.of(), List.of(), 1, Predicted.Surprise.NONE));
    assertThat(check(empty, TRUTH).misses()).isEqualTo(new Predicted.Misses(0, 0));
    assertThat(check(one.build(), TRUTH).volumes()).hasSize(1);
    assertThat(check(one.build(), TRUTH).courses()).isEqualTo(1);
  }

  @Test
  void a_duration_that_leaves_a_limit_open_counts_as_possibly_reached() {
    Courses courses =
        Courses.builder()
            .course("vasculogenic")
            .trial(0, Grade.USABLE, new Lasted.Exactly(60))
            .trial(0, Grade.USABLE, new Lasted.Exactly(59.9))
            .trial(0, Grade.USABLE, new Lasted.AtLeast(30))
            .trial(0, Grade.FULLY_FIRM, new Lasted.Between(60, 120))
            .trial(0, Grade.FULLY_FIRM, new Lasted.Between(0, 121))
            .trial(0, Grade.FULLY_FIRM, new Lasted.AtLeast(240))
            .trial(0, Grade.FULLY_FIRM, new Lasted.NotRecorded())
            .trial(0, Grade.FIRM_NOT_USABLE, new Lasted.Exactly(300))
            .build();

    List<OfDuration> durations = check(courses, TRUTH).durations();

    assertThat(durations.stream().map(OfDuration::minutes)).containsExactly(60, 120, 240);
    assertThat(durations.stream().map(OfDuration::responses)).containsOnly(6);
    assertThat(durations.stream().map(OfDuration::reportedSurely)).containsExactly(3, 1, 1);
    assertThat(durations.stream().map(OfDuration::reportedPossibly)).containsExactly(5, 3, 2);
  }

  @Test
  void the_mean_of_the_replications_is_the_sum_of_the_probabilities() {
    Courses courses = new AdaptiveWorld(3, TRUTH).courses(40, 6);
    double[] sums = new double[2];
    int timed = 0;
    for (int course = 0; course < courses.count(); course++) {
      List<Trial> trials = courses.listOfTrials(course);
      List<Ahead> ahead = StepsAhead.of(TRUTH, courses.nameOfGroup(course), trials);
      for (int i = 0; i < trials.size(); i++) {
        sums[0] += ahead.get(i).useful();
        if (trials.get(i).grade().isUseful() && !trials.get(i).lasted().equals(NONE)) {
          sums[1] += ahead.get(i).longer(Limit.HOUR);
          timed++;
        }
      }
    }

    Predicted found = check(courses, TRUTH);
    double useful =
        found.volumes().stream().mapToDouble(volume -> volume.useful().expected().middle()).sum();

    // A replication's count has a variance of at most a quarter of each report; there are 500.
    assertThat(useful).isCloseTo(sums[0], within(4 * Math.sqrt(240 / 4.0 / 500)));
    assertThat(found.durations().getFirst().responses()).isEqualTo(timed);
    assertThat(found.durations().getFirst().expected().middle())
        .isCloseTo(sums[1], within(4 * Math.sqrt(timed / 4.0 / 500)));
  }

  /**
   * Three questions, each answered falsely with a chance of at most 0.005: more than 7 of 100
   * doubted have a chance below 0.0005 (scipy.stats.binom 1.17.1, 100 at 0.015).
   */
  @Test
  void right_reports_are_hardly_ever_doubted() {
    int doubted = 0;
    for (int world = 0; world < 100; world++) {
      Predicted found = check(new AdaptiveWorld(1000 + world, TRUTH).courses(60, 5), TRUTH);
      doubted += found.doubts().isEmpty() ? 0 : 1;
      assertThat(found.surprise().byChance())
          .isLessThanOrEqualTo(found.surprise().reported() / 99.0);
    }

    assertThat(doubted).isLessThanOrEqualTo(7);
  }

  @Test
  void a_model_that_the_reports_do_not_follow_is_doubted() {
    Courses courses = new AdaptiveWorld(7, TRUTH).courses(300, 6);

    assertThat(check(courses, TRUTH).doubts()).isEmpty();
    assertThat(check(courses, TWICE_AS_LONG).doubts()).hasSizeGreaterThanOrEqualTo(2);
    assertThat(check(courses, HALF_AS_STEEP).doubts())
        .hasAtLeastOneElementOfType(Doubt.RangesMiss.class);
  }

  @Test
  void a_man_whose_reports_contradict_each_other_is_named_by_his_number() {
    Courses.Builder builder = Courses.builder();
    Courses right = new AdaptiveWorld(8, TRUTH).courses(100, 6);
    for (int course = 0; course < right.count(); course++) {
      builder.course(right.nameOfGroup(course));
      for (Trial one : right.listOfTrials(course)) {
        boolean isOfAnother = course == 41 && one.lasted() instanceof Lasted.Exactly;
        builder.trial(
            one.logDose(), one.grade(), isOfAnother ? new Lasted.Exactly(1.5) : one.lasted());
      }
    }

    Predicted found = check(builder.build(), TRUTH);

    assertThat(found.surprise().worst().getFirst().course()).isEqualTo(41);
    assertThat(found.surprise().unlike()).containsExactly(41);
    assertThat(found.doubts()).contains(new Doubt.Unlike(1, 42));
  }

  @Test
  void of_more_than_two_thousand_courses_every_kth_is_looked_at() {
    Predicted all = check(new AdaptiveWorld(1, TRUTH).courses(2000, 1), TRUTH);
    Predicted half = check(new AdaptiveWorld(1, TRUTH).courses(2001, 1), TRUTH);

    assertThat(all.courses()).isEqualTo(2000);
    assertThat(half.courses()).isEqualTo(1001);
  }

  @Test
  void a_check_without_parameters_or_of_an_unknown_group_is_refused() {
    Courses other = Courses.builder().course("other").trial(0, Grade.USABLE, NONE).build();

    assertThatThrownBy(() -> check(world())).hasMessageStartingWith("bug: a check without");
    assertThatThrownBy(() -> check(other, TRUTH)).hasMessage("bug: no group other");
    assertThatThrownBy(() -> new Range(2, 1, 1)).hasMessageStartingWith("bug: a range");
  }
}
