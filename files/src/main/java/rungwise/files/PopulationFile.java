package rungwise.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rungwise.dosing.response.Population;
import rungwise.quantities.Reading;

/**
 * A population of the response model as a JSON document.
 *
 * <p>{@code parameters} holds mu, omega, beta, c2, c4, d0, d1 and tau, and gamma as an object with
 * one number for each group other than the reference group; flat keys such as gamma_mixed or
 * gamma.mixed, and an underscore before a number as in c_2, are read too. Each is a number, or an
 * object with {@code estimate} and {@code se}. Keys that are not named here are kept unread.
 *
 * @param population the estimates
 * @param referenceGroup the group whose gamma is 0
 * @param shares the part of each group among the men it was made from, where given
 * @param referencePreparation the preparation whose strength is 1
 * @param others what else the document holds
 */
public record PopulationFile(
    Population population,
    String referenceGroup,
    Map<String, Double> shares,
    String referencePreparation,
    Map<String, Object> others) {

  private static final String PARAMETERS = "parameters";
  private static final String REFERENCE_GROUP = "reference_group";
  private static final String GROUPS = "groups";
  private static final String REFERENCE_PREPARATION = "reference_preparation";
  static final String DOUBTS = "doubts";
  private static final String ASSUMED = "assumed";
  private static final String GAMMA = "gamma";
  private static final Pattern GAMMA_OF = Pattern.compile(GAMMA + "[_.](.+)");
  private static final Pattern NUMBERED = Pattern.compile("([cd])_([0-9])");
  private static final Set<String> SINGLE =
      Set.of("mu", "omega", "beta", "c2", "c4", "d0", "d1", "tau");
  private static final Pattern TOKEN = Pattern.compile("[a-z_]{1,60}");

  public PopulationFile {
    shares = Map.copyOf(shares);
    others = Map.copyOf(others);
  }

  /** What its maker says against its use; a fit says so. */
  public List<String> doubts() {
    return texts(DOUBTS);
  }

  /** The parameters that its maker assumed. */
  public Set<String> assumed() {
    return Set.copyOf(texts(ASSUMED));
  }

  private List<String> texts(String key) {
    return others.get(key) instanceof List<?> all
        ? all.stream().map(String::valueOf).distinct().toList()
        : List.of();
  }

  /** The population, or every fault of the document with its place. */
  public static Reading<PopulationFile> read(String json) {
    Reading<Map<String, Object>> text = JsonText.object(json);
    return switch (text) {
      case Reading.Refused<Map<String, Object>> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<Map<String, Object>> read -> fromDocument(read.value());
    };
  }

  private static Reading<PopulationFile> fromDocument(Map<String, Object> document) {
    Node root = Node.root(document);
    var reference = token(root.at(REFERENCE_GROUP));
    var preparation = root.at(REFERENCE_PREPARATION).text();
    Map<String, Double> shares = shares(root.at(GROUPS));
    Node parameters = root.at(PARAMETERS);
    Map<String, Double> gammas = gammas(parameters, reference);
    for (String group : new TreeSet<>(shares.keySet())) {
      if (!gammas.containsKey(group)) {
        parameters.at(GAMMA).fault("the group " + group + " is missing");
      }
    }
    Optional<Population> population = population(parameters, gammas);
    if (!root.faults().isEmpty()) {
      return new Reading.Refused<>(root.faults());
    }
    var others = new LinkedHashMap<>(document);
    List.of(PARAMETERS, REFERENCE_GROUP, GROUPS, REFERENCE_PREPARATION).forEach(others::remove);
    return Reading.of(
        new PopulationFile(
            population.orElseThrow(),
            reference.orElseThrow(),
            shares,
            preparation.orElseThrow(),
            others));
  }

  private static Optional<String> token(Node node) {
    return node.text()
        .filter(
            text ->
                TOKEN.matcher(text).matches()
                    || node.fault("must be small letters and underscores").isPresent());
  }

  private static Map<String, Double> shares(Node node) {
    var shares = new TreeMap<String, Double>();
    for (String group : node.isPresent() ? node.keys() : List.<String>of()) {
      estimate(node.at(group)).ifPresent(share -> shares.put(group, share));
      if (!(shares.getOrDefault(group, 0.0) >= 0)) {
        node.at(group).fault("must be 0 or more");
      }
    }
    return shares;
  }

  /** A plain number, or the estimate of an object that has its standard error too. */
  private static Optional<Double> estimate(Node node) {
    return node.content().orElse("") instanceof Map<?, ?>
        ? node.at("estimate").number()
        : node.number();
  }

  private static Map<String, Double> gammas(Node parameters, Optional<String> reference) {
    var gammas = new TreeMap<String, Double>();
    Node nested = parameters.at(GAMMA);
    for (String group : nested.isPresent() ? nested.keys() : List.<String>of()) {
      estimate(nested.at(group)).ifPresent(gamma -> gammas.put(group, gamma));
    }
    for (String key : parameters.isPresent() ? parameters.keys() : List.<String>of()) {
      Matcher flat = GAMMA_OF.matcher(key);
      if (flat.matches()) {
        estimate(parameters.at(key)).ifPresent(gamma -> addFlat(parameters, gammas, flat, gamma));
      } else if (!key.equals(GAMMA) && !SINGLE.contains(nameOf(key))) {
        parameters.fault("unknown " + key + "; known are " + new TreeSet<>(SINGLE) + " and gamma");
      }
    }
    reference.ifPresent(group -> addReference(parameters, gammas, group));
    return gammas;
  }

  private static void addFlat(
      Node parameters, Map<String, Double> gammas, Matcher flat, double gamma) {
    if (gammas.putIfAbsent(flat.group(1), gamma) != null) {
      parameters.fault("gamma of " + flat.group(1) + " is given twice");
    }
  }

  /** The one name of a parameter: c_2 is c2. */
  private static String nameOf(String key) {
    return NUMBERED.matcher(key).replaceAll("$1$2");
  }

  private static void addReference(Node parameters, Map<String, Double> gammas, String group) {
    double given = gammas.merge(group, 0.0, (own, zero) -> own);
    if (given != 0) {
      parameters.at(GAMMA).fault("the reference group " + group + " has " + given + ", not 0");
    }
  }

  /** Where a parameter stands, under one of the spellings of its name. */
  private static Node placeOf(Node parameters, String name) {
    List<String> spelt =
        (parameters.isPresent() ? parameters.keys() : List.<String>of())
            .stream().filter(key -> nameOf(key).equals(name)).toList();
    if (spelt.size() > 1) {
      parameters.fault(name + " is given twice");
    }
    return parameters.at(spelt.isEmpty() ? name : spelt.getFirst());
  }

  private static Optional<Population> population(Node parameters, Map<String, Double> gammas) {
    var single = new TreeMap<String, Double>();
    for (String name : new TreeSet<>(SINGLE)) {
      estimate(placeOf(parameters, name)).ifPresent(value -> single.put(name, value));
    }
    if (single.size() < SINGLE.size()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Population(
              single.getOrDefault("mu", Double.NaN),
              gammas,
              single.getOrDefault("omega", Double.NaN),
              single.getOrDefault("beta", Double.NaN),
              single.getOrDefault("c2", Double.NaN),
              single.getOrDefault("c4", Double.NaN),
              single.getOrDefault("d0", Double.NaN),
              single.getOrDefault("d1", Double.NaN),
              single.getOrDefault("tau", Double.NaN)));
    } catch (IllegalArgumentException outOfRange) {
      return parameters.fault(String.valueOf(outOfRange.getMessage()));
    }
  }
}
