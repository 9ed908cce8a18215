package rungwise.web.teaching;

import java.util.LinkedHashMap;
import java.util.Map;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;

/**
 * The form of one item as typed. Every item has its own form on the page, so the name of a field
 * begins with the item.
 */
record ReadinessForm(Map<String, String> typed) {

  static final String ITEM = "item";

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
        said(item, ReadinessDraft.DAY, ""),
        said(item, ReadinessDraft.HOSPITAL, ""),
        said(item, ReadinessDraft.AFTER_HOURS, ""),
        said(item, ReadinessDraft.TRANSPORT, ""),
        more(item),
        said(item, ReadinessDraft.NOTE, ""));
  }

  /** The field that says which question that was, should the protocol change meanwhile. */
  static String askedField(int number) {
    return "asked-" + number;
  }

  private Map<String, String> more(String item) {
    var more = new LinkedHashMap<String, String>();
    for (int number = 1; typed.containsKey(nameOf(item, askedField(number))); number++) {
      more.put(said(item, askedField(number), ""), said(item, ReadinessDraft.answerTo(number), ""));
    }
    return more;
  }

  /** What was refused, each at its field of the item. */
  Faults placed(Reading.Refused<?> refused) {
    return Faults.of(refused.placed(), field -> nameOf(item(), field));
  }
}
