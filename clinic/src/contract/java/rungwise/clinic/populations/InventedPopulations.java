package rungwise.clinic.populations;

import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rungwise.clinic.course.CoursePorts;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.response.Population;
import rungwise.quantities.Reading;

/**
 * Invented populations, for tests: "mu 1.2 of alprostadil-20". The lower the mean, the more is
 * expected of every volume. None of them knows men of mixed aetiology.
 */
public final class InventedPopulations implements PopulationReader {

  /** Expects a long erection of the first step already in many men. */
  public static final String STRONG = "mu -1 of alprostadil-20";

  /** Expects little of the lower steps. */
  public static final String WEAK = "mu 3 of alprostadil-20";

  private static final Pattern DOCUMENT = Pattern.compile("mu (-?[0-9.]+) of ([a-z0-9.-]+)");

  /** The use cases of a clinic that keeps alprostadil alone, in two strengths. */
  public static Populations of(CoursePorts stored, InstantSource clock) {
    return new Populations(
        new PopulationPorts(
            stored.populations(),
            new InventedPopulations(),
            id -> SamplePreparations.of(id.value()),
            () -> List.of(SamplePreparations.ALPROSTADIL_20, SamplePreparations.ALPROSTADIL_40),
            stored.transactions(),
            clock));
  }

  @Override
  public Reading<PopulationDocument> read(String document) {
    Matcher matcher = DOCUMENT.matcher(document);
    if (!matcher.matches()) {
      return new Reading.Refused<>(List.of("it has no mu", "it has no preparation"));
    }
    var gammas = new HashMap<String, Double>();
    for (AetiologyGroup group : AetiologyGroup.values()) {
      gammas.put(group.token(), 0.0);
    }
    gammas.remove(AetiologyGroup.MIXED.token());
    return Reading.of(
        new PopulationDocument(
            new Population(
                Double.parseDouble(matcher.group(1)),
                Map.copyOf(gammas),
                1.2,
                2.5,
                -1.5,
                1.5,
                3.9,
                0.6,
                0.5),
            matcher.group(2),
            Origin.BROUGHT_IN,
            Set.of("beta", "tau", "gamma of unknown")));
  }

  @Override
  public List<Shipped> shipped() {
    return List.of(new Shipped("shipped", "mu 1 of alprostadil-20"));
  }
}
