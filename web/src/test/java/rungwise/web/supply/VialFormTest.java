package rungwise.web.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.clinic.supply.VialDraft;
import rungwise.dosing.known.Component;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
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
  void each_fault_stands_at_the_field_of_its_own_form() {
    var refused =
        new Reading.Refused<Long>(
            List.of(
                new Fault(VialDraft.LOT, "Enter the lot."),
                new Fault(VialDraft.strengthOf(Component.PAPAVERINE), "Not a strength."),
                new Fault(VialDraft.STRENGTHS, "Enter the strength."),
                Fault.ofForm("Open the course again.")));

    Faults faults = VialForm.empty(VialForm.NEW).placed(refused, Component.ALPROSTADIL);

    assertThat(faults.of("new-lot")).isEqualTo("Enter the lot.");
    assertThat(faults.of("new-strength-papaverine")).isEqualTo("Not a strength.");
    assertThat(faults.of("new-strength-alprostadil")).isEqualTo("Enter the strength.");
    assertThat(faults.of("")).isEqualTo("Open the course again.");
  }
}
