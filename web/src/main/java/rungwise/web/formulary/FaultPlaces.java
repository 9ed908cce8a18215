package rungwise.web.formulary;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import rungwise.dosing.known.Component;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;

/** Ties the faults of a preparation to the fields of its form, by how they begin. */
final class FaultPlaces {

  /** The check box by which a sample was compared with a label. */
  static final String COMPARED = "compared";

  private static final String REASON = "reason";

  private record Place(String beginning, String field) {}

  /** The first that fits counts; a name that is kept already is quoted at the start. */
  private static final List<Place> PLACES =
      Stream.of(
              Stream.of(
                  new Place("The name", PreparationForm.NAME),
                  new Place("\"", PreparationForm.NAME),
                  new Place("The form was", PreparationForm.FORM),
                  new Place("The volume that dissolves", PreparationForm.DILUENT),
                  new Place("The hours of use", PreparationForm.USABLE_HOURS),
                  new Place("The fill of", PreparationForm.FILL)),
              Arrays.stream(Component.values()).flatMap(FaultPlaces::placesOf),
              Stream.of(
                  new Place("No component", PreparationForm.strengthOf(Component.PAPAVERINE)),
                  new Place("The maximum volume", PreparationForm.CEILING),
                  new Place("No syringe holds", PreparationForm.CEILING),
                  new Place("The preservative", PreparationForm.PRESERVATIVE),
                  new Place("The use after opening", PreparationForm.IN_USE),
                  new Place("The days after opening", PreparationForm.IN_USE_DAYS),
                  new Place("The comparison", COMPARED),
                  new Place("The reason", REASON)))
          .flatMap(places -> places)
          .toList();

  private static final List<String> FIELDS = PLACES.stream().map(Place::field).toList();

  private FaultPlaces() {}

  private static Stream<Place> placesOf(Component component) {
    return Stream.of(
        new Place(
            "The strength of " + component.token() + " again", PreparationForm.againOf(component)),
        new Place("The strength of " + component.token(), PreparationForm.strengthOf(component)),
        new Place("The limit of " + component.token(), PreparationForm.limitOf(component)));
  }

  /** The faults at their fields, in the order of the form. */
  static Faults place(List<String> texts) {
    return new Faults(texts.stream().map(text -> new Fault(fieldOf(text), text)).toList())
        .inOrderOf(FIELDS);
  }

  private static String fieldOf(String text) {
    return PLACES.stream()
        .filter(place -> text.startsWith(place.beginning()))
        .map(Place::field)
        .findFirst()
        .orElse(text.contains("more than its limit") ? PreparationForm.CEILING : "");
  }
}
