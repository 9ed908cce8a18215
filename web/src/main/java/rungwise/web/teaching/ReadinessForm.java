package rungwise.web.teaching;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.web.page.FieldPlaces;
import rungwise.web.page.FieldPlaces.Place;

/**
 * The form of one item as typed. Every item has its own form on the page, so the name of a field
 * begins with the item.
 */
record ReadinessForm(Map<String, String> typed) {

  static final String ITEM = "item";
  static final String DAY = "day";
  static final String HOSPITAL = "hospital";
  static final String AFTER_HOURS = "afterHours";
  static final String TRANSPORT = "transport";
  static final String NOTE = "note";

  static final ReadinessForm EMPTY = new ReadinessForm(Map.of());

  ReadinessForm {
    typed = Map.copyOf(typed);
  }

  static String nameOf(String item, String field) {
    return item + "-" + field;
  }

  /** What was typed into a field of an item, or what is on record where nothing was typed. */
  String said(String item, String field, String onRecord) {
    return typed.getOrDefault(nameOf(item, field), onRecord);
  }

  /** The item that was recorded. */
  String item() {
    return typed.getOrDefault(ITEM, "");
  }

  ReadinessDraft draft() {
    String item = item();
    return new ReadinessDraft(
        item,
        said(item, DAY, ""),
        said(item, HOSPITAL, ""),
        said(item, AFTER_HOURS, ""),
        said(item, TRANSPORT, ""),
        more(item),
        said(item, NOTE, ""));
  }

  /** The field that answers a question of the protocol. */
  static String answerField(int number) {
    return "answer-" + number;
  }

  /** The field that says which question that was, should the protocol change meanwhile. */
  static String askedField(int number) {
    return "asked-" + number;
  }

  private Map<String, String> more(String item) {
    var more = new LinkedHashMap<String, String>();
    for (int number = 1; typed.containsKey(nameOf(item, askedField(number))); number++) {
      more.put(said(item, askedField(number), ""), said(item, answerField(number), ""));
    }
    return more;
  }

  /** Where the faults of the item belong. */
  FieldPlaces places() {
    String item = item();
    return new FieldPlaces(
        List.of(
            new Place("\"", nameOf(item, DAY)),
            new Place("Enter the hospital", nameOf(item, HOSPITAL)),
            new Place("Enter the number", nameOf(item, AFTER_HOURS)),
            new Place("Enter how he gets there", nameOf(item, TRANSPORT)),
            new Place("The protocol asks for this", ""),
            new Place("Write at most 120", ""),
            new Place("Write at most", nameOf(item, NOTE)),
            new Place("Choose what", "")),
        nameOf(item, DAY));
  }
}
