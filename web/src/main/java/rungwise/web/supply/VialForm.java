package rungwise.web.supply;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.known.Component;
import rungwise.web.page.FieldPlaces;
import rungwise.web.page.FieldPlaces.Place;

/**
 * A vial's form as typed. The page has two, one for a new vial and one for an addendum: the names
 * of the fields of each begin with its own prefix.
 */
record VialForm(String prefix, Map<String, String> typed) {

  static final String NEW = "new-";
  static final String ADDENDUM = "addendum-";

  static final String LOT = "lot";
  static final String MADE = "made";
  static final String BEYOND_USE = "beyondUse";
  static final String OPENED = "opened";
  static final String OPENED_AT = "openedAt";
  static final String DAYS_IN_USE = "daysInUse";
  static final String DEVICE = "device";
  static final String REASON = "reason";

  /** Why a vial of the clinic's is kept no longer; a form of its own. */
  static final String END = "why";

  static final FieldPlaces PLACES_OF_AN_END = new FieldPlaces(List.of(new Place("Write", END)), "");

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
                    .map(one -> Map.entry(strengthOf(one.getKey()), one.getValue())),
                Stream.of(
                    Map.entry(LOT, vial.lot()),
                    Map.entry(MADE, vial.made()),
                    Map.entry(BEYOND_USE, vial.beyondUse()),
                    Map.entry(OPENED, vial.opened()),
                    Map.entry(OPENED_AT, vial.openedAt()),
                    Map.entry(DAYS_IN_USE, vial.daysInUse()),
                    Map.entry(DEVICE, vial.device())))
            .collect(Collectors.toMap(one -> ADDENDUM + one.getKey(), Map.Entry::getValue));
    return new VialForm(ADDENDUM, fields);
  }

  static String strengthOf(Component component) {
    return "strength-" + component.token();
  }

  String nameOf(String field) {
    return prefix + field;
  }

  /** What was typed into a field. */
  String said(String field) {
    return typed.getOrDefault(nameOf(field), "");
  }

  VialDraft draft() {
    var strengths = new EnumMap<Component, String>(Component.class);
    for (Component component : Component.values()) {
      strengths.put(component, said(strengthOf(component)));
    }
    return new VialDraft(
        said(LOT),
        strengths,
        said(MADE),
        said(BEYOND_USE),
        said(OPENED),
        said(OPENED_AT),
        said(DAYS_IN_USE),
        said(DEVICE));
  }

  /** Where the faults of the form belong. */
  FieldPlaces places(Component first) {
    Stream<Place> strengths =
        Arrays.stream(Component.values())
            .map(one -> new Place(one.fullName() + ": ", nameOf(strengthOf(one))));
    return new FieldPlaces(
        Stream.of(
                Stream.of(
                    new Place("Enter the lot", nameOf(LOT)),
                    new Place("Write at most 60 characters for the lot", nameOf(LOT)),
                    new Place("Enter the strength", nameOf(strengthOf(first)))),
                strengths,
                Stream.of(
                    new Place("Made: ", nameOf(MADE)),
                    new Place("It cannot be made", nameOf(MADE)),
                    new Place("Beyond-use date: ", nameOf(BEYOND_USE)),
                    new Place("Enter the beyond-use date", nameOf(BEYOND_USE)),
                    new Place("Opened: ", nameOf(OPENED)),
                    new Place("Opened at: ", nameOf(OPENED_AT)),
                    new Place("It cannot be opened", nameOf(OPENED)),
                    new Place("Days of use", nameOf(DAYS_IN_USE)),
                    new Place("Write at most 60 characters for the device", nameOf(DEVICE)),
                    new Place("Write", nameOf(REASON))))
            .flatMap(places -> places)
            .toList(),
        "");
  }
}
