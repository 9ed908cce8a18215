package rungwise.dosing.predictive;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import rungwise.dosing.fit.Doubt;
import rungwise.quantities.Volume;

/**
 * What the men of a clinic reported, beside what the response model would have foreseen of each
 * report from the same man's earlier ones.
 *
 * @param courses how many courses with an injection were looked at: all of them, or every k-th
 *     where there are more than {@link PredictiveCheck#MOST_COURSES}
 * @param injections how many injections these courses have
 * @param volumes by volume, rising; empty where there is no injection
 * @param durations by limit, rising; empty where no useful response has a duration that is known
 * @param moreMissed which part of replications misses as many ranges or more
 * @param surprise how surprising single reports and men are
 */
public record Predicted(
    int courses,
    int injections,
    List<OfVolume> volumes,
    List<OfDuration> durations,
    double moreMissed,
    Surprise surprise) {

  /**
   * What comes by chance more rarely than this is doubted. Three things are asked so, each with a
   * chance that is rather too large than too small, so that less than two of a hundred right fits
   * are doubted. An assumption.
   */
  public static final double TOO_RARE = 0.005;

  /** A range holds nine of ten replications. */
  private static final double PART_WITHIN = 0.9;

  public Predicted {
    volumes = List.copyOf(volumes);
    durations = List.copyOf(durations);
  }

  /** Of how many ranges there are, how many miss what was reported. */
  public Misses misses() {
    return misses(volumes, durations);
  }

  static Misses misses(List<OfVolume> volumes, List<OfDuration> durations) {
    List<Boolean> within =
        Stream.concat(
                volumes.stream()
                    .flatMap(one -> Stream.concat(Stream.of(one.useful()), one.grades().stream()))
                    .map(Count::isWithin),
                durations.stream().map(OfDuration::isWithin))
            .toList();
    return new Misses(Collections.frequency(within, false), within.size());
  }

  /** What of it speaks against using the fit: more than chance alone would bring. */
  public List<Doubt> doubts() {
    var doubts = new ArrayList<Doubt>();
    Misses misses = misses();
    if (moreMissed <= TOO_RARE) {
      doubts.add(new Doubt.RangesMiss(misses.missed(), misses.ranges(), misses.byChance()));
    }
    if (Rarity.ofCount(surprise.rare(), surprise.byChance()) <= TOO_RARE) {
      doubts.add(new Doubt.RareReports(surprise.rare(), surprise.reported(), surprise.byChance()));
    }
    if (!surprise.unlike().isEmpty()) {
      doubts.add(
          new Doubt.Unlike(surprise.unlike().size(), 1 + Collections.min(surprise.unlike())));
    }
    return doubts;
  }

  /**
   * How surprising reports are, each after the man's earlier ones.
   *
   * @param reported how many grades and times were reported
   * @param rare how many of them are as rare as 1 in 100, or rarer
   * @param byChance as many would be by chance alone, or fewer
   * @param worst the men whom the model fits worst, the worst first: those of whom all reports
   *     together are as rare as 1 in 100, and of these the first few
   * @param unlike the numbers of the courses, from 0, that are too rare for one of so many men
   */
  public record Surprise(
      int reported, int rare, double byChance, List<Man> worst, List<Integer> unlike) {

    static final Surprise NONE = new Surprise(0, 0, 0, List.of(), List.of());

    public Surprise {
      worst = List.copyOf(worst);
      unlike = List.copyOf(unlike);
    }
  }

  /**
   * One man.
   *
   * @param course the number of his course, from 0
   * @param rare how many of his grades and times are as rare as 1 in 100
   * @param chance that all of his reports together are so rare, at most
   */
  public record Man(int course, int rare, double chance) {}

  /** How many of some ranges miss. */
  public record Misses(int missed, int ranges) {

    /** As many miss by chance alone, where the model is right: one range in ten. */
    public double byChance() {
      return ranges * (1 - PART_WITHIN);
    }
  }

  /**
   * Between what a count was foreseen, in nine of ten replications.
   *
   * @param low one replication in twenty lies below it
   * @param middle the mean, which may lie outside the two where few cases decide it
   * @param high one in twenty lies above it
   */
  public record Range(double low, double middle, double high) {

    public Range {
      if (!(low <= high && Double.isFinite(middle))) {
        throw new IllegalArgumentException("bug: a range from " + low + " to " + high);
      }
    }

    boolean meets(double least, double most) {
      return least <= high && most >= low;
    }
  }

  /** How many reports there are of a kind, and how many were foreseen. */
  public record Count(int reported, Range expected) {

    public boolean isWithin() {
      return expected.meets(reported, reported);
    }
  }

  /**
   * The injections of like volumes of the reference preparation.
   *
   * @param above the volumes are more than this
   * @param upTo and at most this
   * @param injections how many there are
   * @param grades of grades 1 to 4, in this order; grade 0 is read as 1
   * @param useful of grades 3 and 4 together
   */
  public record OfVolume(
      Volume above, Volume upTo, int injections, List<Count> grades, Count useful) {

    public OfVolume {
      grades = List.copyOf(grades);
    }
  }

  /**
   * How many useful responses lasted so long or longer.
   *
   * @param minutes the limit
   * @param responses useful ones of which something is known of the duration
   * @param reportedSurely as many surely did
   * @param reportedPossibly as many did or may have: what is known leaves it open
   * @param expected of the same responses
   */
  public record OfDuration(
      int minutes, int responses, int reportedSurely, int reportedPossibly, Range expected) {

    /** Whether a count that the reports allow lies within the range. */
    public boolean isWithin() {
      return expected.meets(reportedSurely, reportedPossibly);
    }
  }
}
