package rungwise.clinic.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.dosing.known.Component;
import rungwise.quantities.Fault;

/** Every fault of a label names the field that it is about. */
final class VialReadingTest {

  private static List<String> fields(VialDraft draft) {
    return VialReading.of(draft).placed().stream().map(Fault::field).toList();
  }

  @Test
  void an_empty_label_names_all_that_is_missing() {
    assertThat(fields(new VialDraft(" ", Map.of(), "", "", "", "", "", "")))
        .containsExactly(VialDraft.LOT, VialDraft.STRENGTHS, VialDraft.BEYOND_USE);
    assertThat(fields(new VialDraft("L-1", Map.of(), "", "2026-06-30", "", "", "", "")))
        .containsExactly(VialDraft.STRENGTHS);
  }

  @Test
  void each_line_that_cannot_be_read_is_named() {
    String long61 = "x".repeat(61);

    assertThat(
            fields(
                new VialDraft(
                    long61, Map.of(Component.ALPROSTADIL, ".5"), "a", "b", "c", "d", "0", long61)))
        .containsExactlyInAnyOrder(
            VialDraft.LOT,
            VialDraft.DEVICE,
            VialDraft.strengthOf(Component.ALPROSTADIL),
            VialDraft.MADE,
            VialDraft.BEYOND_USE,
            VialDraft.OPENED,
            VialDraft.OPENED_AT,
            VialDraft.DAYS_IN_USE);
  }

  @Test
  void dates_in_the_wrong_order_are_named_by_the_one_to_look_at() {
    Map<Component, String> strength = Map.of(Component.ALPROSTADIL, "20");

    assertThat(
            fields(
                new VialDraft(
                    "L-1", strength, "2026-07-01", "2026-06-30", "2026-05-01", "", "", "")))
        .containsExactly(VialDraft.MADE, VialDraft.OPENED);
  }
}
