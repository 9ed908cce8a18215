package rungwise.web.supply;

import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.supply.BefellDraft;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.known.Component;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;

/**
 * A vial's form as typed. The page has several, such as one for a new vial and one for an addendum:
 * the names of the fields of each begin with its own prefix.
 */
record VialForm(String prefix, Map<String, String> typed) {

  static final String NEW = "new-";
  static final String ADDENDUM = "addendum-";
  static final String BEFELL = "befell-";
  static final String JUDGED = "judged-";

  /** Why a vial of the clinic's is kept no longer; a form of its own. */
  static final String END = "why";

  VialForm {
    typed = Map.copyOf(typed);
  }

  static VialForm empty(String prefix) {
    return new VialForm(prefix, Map.of());
  }

  /** A vial that is written down, for an addendum to it. */
  static VialForm addendumTo(VialDraft vial) {
    Map<String, String> fields =
        Stream.concat(
                vial.strengths().entrySet().stream()
                    .map(one -> Map.entry(VialDraft.strengthOf(one.getKey()), one.getValue())),
                Stream.of(
                    Map.entry(VialDraft.LOT, vial.lot()),
                    Map.entry(VialDraft.MADE, vial.made()),
                    Map.entry(VialDraft.BEYOND_USE, vial.beyondUse()),
                    Map.entry(VialDraft.OPENED, vial.opened()),
                    Map.entry(VialDraft.OPENED_AT, vial.openedAt()),
                    Map.entry(VialDraft.DAYS_IN_USE, vial.daysInUse()),
                    Map.entry(VialDraft.DEVICE, vial.device())))
            .collect(Collectors.toMap(one -> ADDENDUM + one.getKey(), Map.Entry::getValue));
    return new VialForm(ADDENDUM, fields);
  }

  String nameOf(String field) {
    return prefix + field;
  }

  /** What is said once it is kept. */
  String kept() {
    return switch (prefix) {
      case BEFELL -> "It is on record.";
      case JUDGED -> "The vial may be used as its label says.";
      default -> "The vial is on record.";
    };
  }

  /** What was typed into a field. */
  String said(String field) {
    return typed.getOrDefault(nameOf(field), "");
  }

  VialDraft draft() {
    var strengths = new EnumMap<Component, String>(Component.class);
    for (Component component : Component.values()) {
      strengths.put(component, said(VialDraft.strengthOf(component)));
    }
    return new VialDraft(
        said(VialDraft.LOT),
        strengths,
        said(VialDraft.MADE),
        said(VialDraft.BEYOND_USE),
        said(VialDraft.OPENED),
        said(VialDraft.OPENED_AT),
        said(VialDraft.DAYS_IN_USE),
        said(VialDraft.DEVICE));
  }

  BefellDraft befell() {
    return new BefellDraft(
        said(BefellDraft.WHAT),
        said(BefellDraft.DAY),
        said(BefellDraft.CELSIUS),
        said(BefellDraft.LEAST),
        said(BefellDraft.MOST),
        said(CourseChanges.REASON));
  }

  /**
   * What was refused, each at its field.
   *
   * @param first the component at which what is wrong with all strengths is shown
   */
  Faults placed(Reading.Refused<?> refused, Component first) {
    String strength = VialDraft.strengthOf(first);
    return Faults.of(
        refused.placed(), field -> nameOf(field.equals(VialDraft.STRENGTHS) ? strength : field));
  }
}
