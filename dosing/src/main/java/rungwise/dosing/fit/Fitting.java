package rungwise.dosing.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import rungwise.dosing.draws.Covariance;
import rungwise.inference.Ascent;
import rungwise.inference.Curved;
import rungwise.inference.SymmetricSystem;

/**
 * Fits the response model to courses by maximum marginal likelihood: each man's requirement is
 * integrated out ({@link CourseIntegral}), and what is left is climbed by Newton's steps with exact
 * derivatives ({@link Ascent}). A search over many courses begins with a part of them.
 */
public final class Fitting {

  /** A search with fewer courses has no standard errors, and one parameter a course. */
  public static final int LEAST_COURSES = 2;

  /** The search ends where another step would gain less; an error far below a standard error. */
  private static final double ENOUGH = 1e-12;

  private static final double ENOUGH_OF_A_PART = 1e-2;

  /** About how many courses the parts have with which a search begins. */
  private static final int[] PARTS = {500, 8000};

  /** A part is worth a search only if the whole is so much larger. */
  private static final int WORTH = 4;

  private final Courses courses;
  private final String reference;
  private final Workers workers;
  private final Consumer<Pass> progress;
  private final Layout layout;
  private final Ranges ranges;
  private int passes = 0;

  private Fitting(Courses courses, String reference, Workers workers, Consumer<Pass> progress) {
    this.courses = courses;
    this.reference = reference;
    this.workers = workers;
    this.progress = progress;
    layout = new Layout(courses.groups(), reference, Layout.Scale.PLAIN);
    ranges = new Ranges(layout);
  }

  /**
   * Fits.
   *
   * @param reference one of the groups: see {@link #mostFrequentGroup}
   * @param progress is told after each look at the courses
   * @throws IllegalArgumentException if there are fewer than {@link #LEAST_COURSES} courses, no
   *     trial, or no such group
   */
  public static Fit fit(
      Courses courses, String reference, Workers workers, Consumer<Pass> progress) {
    boolean isEnough = courses.count() >= LEAST_COURSES && courses.trials() > 0;
    if (isEnough && courses.groups().contains(reference)) {
      return new Fitting(courses, reference, workers, progress).run();
    }
    throw new IllegalArgumentException(
        "bug: " + courses.count() + " courses, " + courses.trials() + " trials, " + reference);
  }

  /** The group with most courses; the first by name of several. */
  public static Optional<String> mostFrequentGroup(Courses courses) {
    return courses.groups().stream()
        .max(Comparator.comparingInt(courses::countOf).thenComparing(Comparator.reverseOrder()));
  }

  private Fit run() {
    double[] point = layout.scaled(Start.of(courses, layout));
    boolean hasDurations = Doubts.hasDurations(courses);
    if (!hasDurations) {
      for (int slope : new int[] {Point.D0, Point.D1, Point.TAU}) {
        ranges.hold(slope, point[layout.place(slope)]);
      }
    }
    for (int part : PARTS) {
      if (courses.count() > WORTH * part) {
        point = search(point, courses.count() / part, ENOUGH_OF_A_PART).point();
      }
    }
    Ascent.Top top = search(point, /* stride= */ 1, ENOUGH);
    Covariance covariance = covariance(top);
    Map<String, Fit.Estimate> estimates = estimates(top, covariance);
    return new Fit(
        reference,
        estimates,
        covariance,
        top.curved().value(),
        courses.count(),
        courses.trials(),
        shares(),
        doubts(top, estimates));
  }

  private Ascent.Top search(double[] start, int stride, double enough) {
    var marginal = new Marginal(courses, layout, workers, stride);
    return Ascent.search(
        scaled -> {
          Curved curved = marginal.curved(scaled);
          passes++;
          progress.accept(new Pass.Look(marginal.count(), passes, curved.value()));
          return curved;
        },
        start,
        ranges.low(),
        ranges.high(),
        enough);
  }

  /** From the curvature at the top, of the parameters that are not at an end of their ranges. */
  private Covariance covariance(Ascent.Top top) {
    List<Integer> free = new ArrayList<>();
    for (int place = 0; place < layout.size(); place++) {
      if (!ranges.isHeld(place) && !ranges.isAtEnd(place, top.point()[place])) {
        free.add(place);
      }
    }
    double[][] information = new double[free.size()][free.size()];
    for (int row = 0; row < free.size(); row++) {
      for (int column = 0; column < free.size(); column++) {
        information[row][column] = -top.curved().hessian()[free.get(row)][free.get(column)];
      }
    }
    return SymmetricSystem.of(information)
        .map(SymmetricSystem::inverse)
        .map(inverse -> natural(inverse, free, top))
        .orElse(Covariance.NONE);
  }

  /** What is known on the scales of the search, on the natural ones (the delta method). */
  private Covariance natural(double[][] inverse, List<Integer> free, Ascent.Top top) {
    double[][] natural = new double[free.size()][free.size()];
    for (int row = 0; row < natural.length; row++) {
      for (int column = 0; column < natural.length; column++) {
        natural[row][column] =
            slope(free.get(row), top) * slope(free.get(column), top) * inverse[row][column];
      }
    }
    return Covariance.of(free.stream().map(layout.names()::get).toList(), natural);
  }

  private double slope(int place, Ascent.Top top) {
    return layout.scale(place).slope(top.point()[place]);
  }

  private Map<String, Fit.Estimate> estimates(Ascent.Top top, Covariance covariance) {
    var estimates = new LinkedHashMap<String, Fit.Estimate>();
    for (int place = 0; place < layout.size(); place++) {
      if (!ranges.isHeld(place)) {
        String name = layout.names().get(place);
        estimates.put(
            name,
            new Fit.Estimate(
                layout.scale(place).natural(top.point()[place]), covariance.error(name)));
      }
    }
    return estimates;
  }

  private List<Doubt> doubts(Ascent.Top top, Map<String, Fit.Estimate> estimates) {
    var doubts = new ArrayList<>(Doubts.of(courses));
    boolean hasErrors = false;
    for (int place = 0; place < layout.size(); place++) {
      if (!ranges.isHeld(place) && ranges.isAtEnd(place, top.point()[place])) {
        doubts.add(new Doubt.AtBound(layout.names().get(place)));
      }
    }
    for (Fit.Estimate estimate : estimates.values()) {
      hasErrors |= estimate.error().isPresent();
    }
    if (!hasErrors) {
      doubts.add(new Doubt.NotATop());
    }
    if (!top.isSettled()) {
      doubts.add(new Doubt.NotSettled());
    }
    return doubts;
  }

  private Map<String, Double> shares() {
    var shares = new TreeMap<String, Double>();
    for (String group : courses.groups()) {
      shares.put(group, (double) courses.countOf(group) / courses.count());
    }
    return shares;
  }
}
