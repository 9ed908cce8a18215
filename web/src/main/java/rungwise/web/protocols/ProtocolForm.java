package rungwise.web.protocols;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.protocol.CountedOption;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Typed;

/**
 * A protocol as a form. Its fields are named as the parts of the document are, joined by a hyphen:
 * "ceiling-dose", "steps-2-add", "start-mixed-dose".
 */
record ProtocolForm(Typed typed) {

  static final int STEPS = 5;
  static final int STRENGTHS = 2;
  static final int COMPONENT_LIMITS = 4;
  static final int PLAN_ITEMS = 4;
  static final String COMPOSITION = "composition";
  static final String HOLDS = "holds";
  static final String HOLDS_FROM = "holds_from";
  static final String SOURCE = "source";
  static final String WORDS = "words";

  /** How a partial response is answered, which may be left out. */
  static final String AFTER_PARTIAL = "after_partial";

  static final String RESPONSES = "responses";

  /** The limits of the response model, either of which may be left out. */
  static final String MODEL = "model";

  static final List<String> CHANCES = List.of("chance_of_120_minutes", "chance_of_240_minutes");
  static final String IN_1000 = "in_1000";

  static final List<String> STEP = List.of("up_to", "add", "add_at_most");
  static final List<String> STRENGTH = List.of("strength", "not_below");
  static final List<String> COMPONENT_LIMIT = List.of("most");
  static final List<String> PLAN_ITEM = List.of("ask");
  static final List<String> VISIT = List.of("within_minutes", "after_partial_up_to");
  static final String AFTER_NONE = "after_none";
  static final String DOSE = "dose";
  static final String VALUE = "value";
  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,6}");

  /** The place that a fault of a document names before its colon. */
  private static final Pattern PLACE =
      Pattern.compile("([a-z_0-9]+)(?: (\\d+))?(?:, ([a-z_0-9]+))?.*");

  /** The parts of rows that may be left empty, with the most rows and the fields of each. */
  private static final Map<String, Rows> ROWED =
      Map.of(
          "steps",
          new Rows(STEPS, STEP),
          "strengths",
          new Rows(STRENGTHS, STRENGTH),
          "component_limits",
          new Rows(COMPONENT_LIMITS, COMPONENT_LIMIT),
          COMPOSITION,
          new Rows(COMPONENT_LIMITS, List.of(HOLDS)),
          "emergency_plan",
          new Rows(PLAN_ITEMS, PLAN_ITEM));

  private record Rows(int most, List<String> keys) {}

  /** The parts of the document that the form says. */
  Map<String, Object> parts(int version) {
    var parts = new LinkedHashMap<String, Object>();
    parts.put("protocol", said("protocol"));
    parts.put("version", version);
    parts.put("title", said("title"));
    parts.put("sample", false);
    if (!said(HOLDS_FROM).isEmpty()) {
      parts.put(HOLDS_FROM, said(HOLDS_FROM));
    }
    parts.put("for", List.copyOf(typed.all("for")));
    putComposition(parts);
    parts.put("start", Arrays.stream(AetiologyGroup.values()).map(this::start).toList());
    parts.put("steps", rows("steps", STEPS, STEP));
    putPart(parts, AFTER_PARTIAL, RESPONSES);
    putRows(parts, "strengths", STRENGTHS, STRENGTH);
    parts.put("ceiling", part("ceiling", List.of(DOSE)));
    putRows(parts, "component_limits", COMPONENT_LIMITS, COMPONENT_LIMIT);
    putPart(parts, "care_above", DOSE);
    if (isUsed("same_visit", VISIT)) {
      parts.put(
          "same_visit",
          with(AFTER_NONE, typed.has(row("same_visit", AFTER_NONE), "true"), "same_visit", VISIT));
    }
    putRows(parts, "emergency_plan", PLAN_ITEMS, PLAN_ITEM);
    putChances(parts);
    Stream.of(CountedOption.values()).forEach(option -> putNumber(parts, option));
    return parts;
  }

  private void putComposition(Map<String, Object> parts) {
    List<String> strengths =
        usedRows(COMPOSITION, COMPONENT_LIMITS, List.of(HOLDS)).stream()
            .map(row -> said(row(row, HOLDS)))
            .toList();
    if (!strengths.isEmpty()) {
      parts.put(COMPOSITION, strengths);
    }
  }

  private void putPart(Map<String, Object> parts, String part, String key) {
    if (isUsed(part, List.of(key))) {
      parts.put(part, part(part, List.of(key)));
    }
  }

  private void putNumber(Map<String, Object> parts, CountedOption option) {
    if (option.isNeeded() || isUsed(option.part(), List.of(VALUE))) {
      parts.put(option.part(), part(option.part(), List.of(VALUE)));
    }
  }

  private void putChances(Map<String, Object> parts) {
    var chances = new LinkedHashMap<String, Object>();
    for (String chance : CHANCES) {
      if (isUsed(row(MODEL, chance), List.of(IN_1000))) {
        chances.put(chance, part(row(MODEL, chance), List.of(IN_1000)));
      }
    }
    if (!chances.isEmpty()) {
      parts.put(MODEL, chances);
    }
  }

  private Map<String, Object> start(AetiologyGroup group) {
    return with("groups", List.of(group.token()), row("start", group.token()), List.of(DOSE));
  }

  private void putRows(Map<String, Object> parts, String part, int most, List<String> keys) {
    List<Object> rows = rows(part, most, keys);
    if (!rows.isEmpty()) {
      parts.put(part, rows);
    }
  }

  /** The faults of the document, each at the field that it is about. */
  Faults faults(List<String> found) {
    return new Faults(found.stream().map(this::fault).toList());
  }

  private Fault fault(String text) {
    int colon = text.indexOf(": ");
    if (colon < 0) {
      return Fault.ofForm(text);
    }
    return new Fault(fieldOf(text.substring(0, colon)).orElse(""), text);
  }

  private Optional<String> fieldOf(String place) {
    Matcher matcher = PLACE.matcher(place);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String part = matcher.group(1);
    String key = Optional.ofNullable(matcher.group(3)).orElse("");
    if (part.equals("start") || ROWED.containsKey(part)) {
      String row =
          rowOf(part, Optional.ofNullable(matcher.group(2)).map(Integer::valueOf).orElse(1));
      String field = key.isEmpty() || key.equals("groups") ? firstKey(part) : key;
      return Optional.of(row(row, field));
    }
    if (Stream.of(CountedOption.values()).anyMatch(option -> option.part().equals(part))) {
      return Optional.of(row(part, key.isEmpty() ? VALUE : key));
    }
    return Optional.of(
        switch (part) {
          case AFTER_PARTIAL -> row(part, key.isEmpty() ? RESPONSES : key);
          case "ceiling", "care_above" -> row(part, key.isEmpty() ? DOSE : key);
          case "same_visit" -> row(part, key.isEmpty() ? VISIT.getFirst() : key);
          case MODEL -> row(row(MODEL, CHANCES.contains(key) ? key : CHANCES.getFirst()), IN_1000);
          case "version" -> "protocol";
          default -> part;
        });
  }

  private static String firstKey(String part) {
    return switch (part) {
      case "start" -> DOSE;
      case "steps" -> STEP.get(1);
      default -> ROWED.getOrDefault(part, new Rows(0, List.of(DOSE))).keys().getFirst();
    };
  }

  /** The row of the form that became the item of that number in the document. */
  private String rowOf(String part, int item) {
    if (part.equals("start")) {
      AetiologyGroup[] groups = AetiologyGroup.values();
      return row(part, groups[Math.min(item, groups.length) - 1].token());
    }
    Rows rows = ROWED.getOrDefault(part, new Rows(0, List.of()));
    List<String> used = usedRows(part, rows.most(), rows.keys());
    return used.isEmpty() ? row(part, "1") : used.get(Math.min(item, used.size()) - 1);
  }

  private List<String> usedRows(String part, int most, List<String> keys) {
    return IntStream.rangeClosed(1, most)
        .mapToObj(number -> row(part, Integer.toString(number)))
        .filter(row -> isUsed(row, keys))
        .toList();
  }

  private List<Object> rows(String part, int most, List<String> keys) {
    return usedRows(part, most, keys).stream().<Object>map(row -> part(row, keys)).toList();
  }

  private boolean isUsed(String prefix, List<String> keys) {
    return keys.stream().anyMatch(key -> !said(row(prefix, key)).isEmpty());
  }

  private Map<String, Object> with(String key, Object value, String prefix, List<String> keys) {
    var all = new LinkedHashMap<String, Object>();
    all.put(key, value);
    all.putAll(part(prefix, keys));
    return all;
  }

  private Map<String, Object> part(String prefix, List<String> keys) {
    var part = new LinkedHashMap<String, Object>();
    for (String key : keys) {
      String said = said(row(prefix, key));
      if (!said.isEmpty() || !key.equals("after_partial_up_to")) {
        part.put(key, WHOLE.matcher(said).matches() ? Integer.valueOf(said) : said);
      }
    }
    part.put(SOURCE, SourceText.parts(said(row(prefix, SOURCE)), said(row(prefix, WORDS))));
    return part;
  }

  private String said(String field) {
    return typed.text(field).strip();
  }

  static String row(String prefix, String key) {
    return prefix + "-" + key;
  }
}
