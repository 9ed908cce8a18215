package rungwise.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.quantities.Fault;
import rungwise.web.page.FieldPlaces.Place;

class FieldPlacesTest {

  private static final FieldPlaces PLACES =
      new FieldPlaces(
          List.of(new Place("Lot", "lot"), new Place("Lot of", "never"), new Place("Day", "day")),
          "");

  @Test
  void a_fault_stands_at_the_first_field_that_fits_and_the_others_at_the_form() {
    Faults faults = PLACES.place(List.of("Day missing.", "No course.", "Lot of nothing."));

    assertThat(faults.all())
        .containsExactly(
            Fault.ofForm("No course."),
            new Fault("lot", "Lot of nothing."),
            new Fault("day", "Day missing."));
  }

  @Test
  void what_fits_nowhere_may_have_a_field_of_its_own() {
    var places = new FieldPlaces(List.of(), "day");

    assertThat(places.place(List.of("Still to come.")).of("day")).isEqualTo("Still to come.");
  }
}
