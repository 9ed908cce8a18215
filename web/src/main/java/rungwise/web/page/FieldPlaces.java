package rungwise.web.page;

import java.util.List;
import java.util.Optional;
import rungwise.quantities.Fault;

/**
 * Ties the faults of a form to its fields by how they begin.
 *
 * @param places in the order of the form; the first that fits counts
 * @param otherwise the field of every other fault; empty for the form as a whole
 */
public record FieldPlaces(List<Place> places, String otherwise) {

  /** A fault that begins so belongs to that field. */
  public record Place(String beginning, String field) {}

  public FieldPlaces {
    places = List.copyOf(places);
  }

  /** The faults at their fields, in the order of the form. */
  public Faults place(List<String> texts) {
    List<String> order = places.stream().map(Place::field).toList();
    return new Faults(texts.stream().map(text -> new Fault(fieldOf(text), text)).toList())
        .inOrderOf(order);
  }

  private String fieldOf(String text) {
    Optional<Place> found =
        places.stream().filter(place -> text.startsWith(place.beginning())).findFirst();
    return found.map(Place::field).orElse(otherwise);
  }
}
