package rungwise.web.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.known.Component;
import rungwise.web.page.Faults;

class VialFormTest {

  @Test
  void an_addendum_begins_with_what_is_written_down() {
    var strengths = new EnumMap<Component, String>(Component.class);
    for (Component component : Component.values()) {
      strengths.put(component, "");
    }
    strengths.put(Component.ALPROSTADIL, "20");
    var vial =
        new VialDraft("L-7", strengths, "", "2026-06-30", "2026-03-01", "09:05", "28", "0.5 mL");

    assertThat(VialForm.addendumTo(vial).draft()).isEqualTo(vial);
  }

  @Test
  void a_new_vial_begins_empty() {
    VialDraft draft = VialForm.empty(VialForm.NEW).draft();

    assertThat(draft.strengths().values()).containsOnly("");
    assertThat(draft.beyondUse()).isEmpty();
  }

  @Test
  void the_two_forms_of_the_page_do_not_read_each_others_fields() {
    var typed = Map.of("new-lot", "A", "addendum-lot", "B");

    assertThat(new VialForm(VialForm.NEW, typed).draft().lot()).isEqualTo("A");
    assertThat(new VialForm(VialForm.ADDENDUM, typed).draft().lot()).isEqualTo("B");
  }

  @Test
  void each_fault_stands_at_the_line_of_the_label_that_it_is_about() {
    Faults faults =
        VialForm.empty(VialForm.NEW)
            .places(Component.ALPROSTADIL)
            .place(
                List.of(
                    "Enter the lot, as the label says it.",
                    "alprostadil: \".5\" is not a strength",
                    "Enter the strength of each component, as the label says it.",
                    "Made: \"x\" is not a date",
                    "Enter the beyond-use date: without it no dose may be drawn.",
                    "Opened: \"x\" is not a date",
                    "Days of use once opened: a whole number from 1 to 365.",
                    "Write the reason: it stays on record."));

    assertThat(faults.of("new-lot")).startsWith("Enter the lot");
    assertThat(faults.of("new-strength-alprostadil")).contains(".5", "Enter the strength");
    assertThat(faults.of("new-made")).startsWith("Made");
    assertThat(faults.of("new-beyondUse")).startsWith("Enter the beyond-use");
    assertThat(faults.of("new-opened")).startsWith("Opened");
    assertThat(faults.of("new-daysInUse")).startsWith("Days of use");
    assertThat(faults.of("new-reason")).startsWith("Write the reason");
  }
}
