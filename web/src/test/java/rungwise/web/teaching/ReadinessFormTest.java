package rungwise.web.teaching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;

class ReadinessFormTest {

  private static final ReadinessForm PLAN =
      new ReadinessForm(
          Map.of(
              "item", "EMERGENCY_PLAN",
              "EMERGENCY_PLAN-day", "2026-03-02",
              "EMERGENCY_PLAN-hospital", "Quellmoor Hospital (invented)",
              "TEACH_BACK-day", "2025-01-01"));

  @Test
  void an_item_takes_its_own_fields_only() {
    assertThat(PLAN.draft())
        .isEqualTo(
            new ReadinessDraft(
                "EMERGENCY_PLAN", "2026-03-02", "Quellmoor Hospital (invented)", "", "", ""));
  }

  @Test
  void each_line_of_the_plan_has_its_own_fault() {
    Faults faults =
        PLAN.placed(
            new Reading.Refused<Long>(
                List.of(
                    new Fault(ReadinessDraft.DAY, "It is still to come."),
                    new Fault(ReadinessDraft.answerTo(2), "The protocol asks for this."))));

    assertThat(faults.of("EMERGENCY_PLAN-day")).isEqualTo("It is still to come.");
    assertThat(faults.of("EMERGENCY_PLAN-answer-2")).isEqualTo("The protocol asks for this.");
  }
}
