package rungwise.dosing.predictive;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import rungwise.dosing.response.Given;
import rungwise.quantities.Volume;

/**
 * Volumes of the reference preparation in bins whose edges are steps of 0.05 mL, joined from small
 * to large until each holds enough injections. An upper edge belongs to its bin.
 */
final class VolumeBins {

  /** Assumption: the step of the plain stepwise rule. */
  private static final Volume STEP = Volume.ofMicrolitres(50);

  /** Assumption: with fewer injections in a bin the range of a count says next to nothing. */
  static final int FEWEST = 20;

  /** A litre: no dose comes near it. */
  private static final int MOST_STEPS = 20_000;

  /** So far above an edge, in steps, a volume is at it: logarithms come back with an error. */
  private static final double AT_EDGE = 1e-9;

  /** The upper edge of each bin, in steps. */
  private final List<Integer> edges = new ArrayList<>();

  private VolumeBins() {}

  /** The bins for what was given, as logarithms of the multiple of the reference amount. */
  static VolumeBins of(DoubleStream logDoses) {
    var counts = new TreeMap<Integer, Integer>();
    logDoses.forEach(logDose -> counts.merge(steps(logDose), 1, Integer::sum));
    var bins = new VolumeBins();
    int held = 0;
    for (Map.Entry<Integer, Integer> step : counts.entrySet()) {
      held += step.getValue();
      if (held >= FEWEST) {
        bins.edges.add(step.getKey());
        held = 0;
      }
    }
    if (held > 0) {
      if (!bins.edges.isEmpty()) {
        bins.edges.removeLast();
      }
      bins.edges.add(counts.lastKey());
    }
    return bins;
  }

  private static int steps(double logDose) {
    double steps = Math.exp(logDose) * Given.REFERENCE.ratioTo(STEP);
    return (int) Math.clamp(Math.ceil(steps - AT_EDGE), 1, MOST_STEPS);
  }

  int count() {
    return edges.size();
  }

  /** The bin of what was given, which must be among those that the bins were made for. */
  int of(double logDose) {
    int steps = steps(logDose);
    int bin = 0;
    while (edges.get(bin) < steps) {
      bin++;
    }
    return bin;
  }

  Volume above(int bin) {
    return bin == 0 ? Volume.ZERO : upTo(bin - 1);
  }

  Volume upTo(int bin) {
    return STEP.times(edges.get(bin));
  }
}
