package rungwise.web.people;

import java.util.List;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;

/** Ties the faults of the people use cases to the fields of their forms, by how they begin. */
final class FaultPlaces {

  static final String CODE = "code";
  static final String SIGN_IN_NAME = "signInName";
  static final String FULL_NAME = "fullName";
  static final String PASSWORD = "password";
  static final String ROLES = "roles";

  private record Place(String beginning, String field) {}

  /** The first that fits counts; a sign-in name that cannot be read is quoted at the start. */
  private static final List<Place> PLACES =
      List.of(
          new Place("The sign-in name and the code", CODE),
          new Place("The sign-in name", SIGN_IN_NAME),
          new Place("\"", SIGN_IN_NAME),
          new Place("The full name", FULL_NAME),
          new Place("The password", PASSWORD),
          new Place("No role", ROLES));

  /** The order in which every form of this package asks. */
  private static final List<String> ORDER = List.of(CODE, FULL_NAME, SIGN_IN_NAME, PASSWORD, ROLES);

  private FaultPlaces() {}

  static Faults place(List<String> texts) {
    return new Faults(texts.stream().map(text -> new Fault(fieldOf(text), text)).toList())
        .inOrderOf(ORDER);
  }

  private static String fieldOf(String text) {
    return PLACES.stream()
        .filter(place -> text.startsWith(place.beginning()))
        .map(Place::field)
        .findFirst()
        .orElse("");
  }
}
