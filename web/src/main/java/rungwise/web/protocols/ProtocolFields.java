package rungwise.web.protocols;

import static rungwise.web.protocols.ProtocolForm.row;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.protocol.CountedOption;
import rungwise.web.page.Typed;

/** Fills the form of a protocol from the parts of a document. */
final class ProtocolFields {

  private final Map<String, List<String>> fields = new LinkedHashMap<>();

  private ProtocolFields() {}

  /** The form that says the parts of a document that has been read. */
  static ProtocolForm of(Map<String, Object> parts) {
    var filled = new ProtocolFields();
    filled.fill(parts);
    return new ProtocolForm(new Typed(filled.fields));
  }

  private void fill(Map<String, Object> parts) {
    set("protocol", parts, "protocol");
    set("title", parts, "title");
    set(ProtocolForm.HOLDS_FROM, parts, ProtocolForm.HOLDS_FROM);
    fields.put("for", list(parts, "for").stream().map(String::valueOf).toList());
    composition(list(parts, ProtocolForm.COMPOSITION));
    for (Object start : list(parts, "start")) {
      for (Object group : list(map(start), "groups")) {
        AetiologyGroup.of(group.toString())
            .ifPresent(
                one -> put(row("start", one.token()), map(start), List.of(ProtocolForm.DOSE)));
      }
    }
    rows("steps", list(parts, "steps"), ProtocolForm.STEP);
    rows("strengths", list(parts, "strengths"), ProtocolForm.STRENGTH);
    rows("component_limits", list(parts, "component_limits"), ProtocolForm.COMPONENT_LIMIT);
    rows("emergency_plan", list(parts, "emergency_plan"), ProtocolForm.PLAN_ITEM);
    put(
        ProtocolForm.AFTER_PARTIAL,
        part(parts, ProtocolForm.AFTER_PARTIAL),
        List.of(ProtocolForm.RESPONSES));
    for (String limit : List.of("ceiling", "care_above")) {
      put(limit, part(parts, limit), List.of(ProtocolForm.DOSE));
    }
    put("same_visit", part(parts, "same_visit"), ProtocolForm.VISIT);
    String afterNone = ProtocolForm.AFTER_NONE;
    set(row("same_visit", afterNone), part(parts, "same_visit"), afterNone);
    for (String chance : ProtocolForm.CHANCES) {
      put(
          row(ProtocolForm.MODEL, chance),
          part(part(parts, ProtocolForm.MODEL), chance),
          List.of(ProtocolForm.IN_1000));
    }
    for (CountedOption option : CountedOption.values()) {
      put(option.part(), part(parts, option.part()), List.of(ProtocolForm.VALUE));
    }
  }

  private void composition(List<?> strengths) {
    int number = 0;
    for (Object strength : strengths) {
      number++;
      fields.put(
          row(row(ProtocolForm.COMPOSITION, Integer.toString(number)), ProtocolForm.HOLDS),
          List.of(strength.toString()));
    }
  }

  private void set(String field, Map<?, ?> parts, String key) {
    Optional.ofNullable(parts.get(key))
        .ifPresent(value -> fields.put(field, List.of(value.toString())));
  }

  private void rows(String part, List<?> items, List<String> keys) {
    int number = 0;
    for (Object item : items) {
      number++;
      put(row(part, Integer.toString(number)), map(item), keys);
    }
  }

  private void put(String prefix, Map<?, ?> values, List<String> keys) {
    keys.forEach(key -> set(row(prefix, key), values, key));
    Map<?, ?> source = part(values, ProtocolForm.SOURCE);
    if (!source.isEmpty()) {
      fields.put(row(prefix, ProtocolForm.SOURCE), List.of(SourceText.kind(source)));
      fields.put(row(prefix, ProtocolForm.WORDS), List.of(SourceText.words(source)));
    }
  }

  private static List<?> list(Map<?, ?> parts, String key) {
    return parts.get(key) instanceof List<?> list ? list : List.of();
  }

  private static Map<?, ?> part(Map<?, ?> parts, String key) {
    return parts.get(key) instanceof Map<?, ?> map ? map : Map.of();
  }

  private static Map<?, ?> map(Object part) {
    return part instanceof Map<?, ?> map ? map : Map.of();
  }
}
