package rungwise.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.quantities.Fault;
import rungwise.web.page.Choice.Option;

class ChoiceTest {

  private static final Choice CHOICE =
      Choice.of(
          "size",
          "Size",
          List.of(new Option("half", "0.5 mL", "", true), new Option("one", "1 mL", "", false)));

  @Test
  void the_first_option_carries_the_name_that_faults_link_to() {
    assertThat(CHOICE.options().stream().map(CHOICE::idOf)).containsExactly("size", "size-1");
  }

  @Test
  void picking_replaces_what_was_picked() {
    Choice picked = CHOICE.withPicked(Set.of("one"));

    assertThat(picked.options().stream().filter(Option::picked).map(Option::value))
        .containsExactly("one");
  }

  @Test
  void it_is_described_by_its_hint_and_its_fault_only_where_there_are_any() {
    Faults faults = new Faults(List.of(new Fault("size", "Choose one.")));

    assertThat(CHOICE.describedBy()).isEmpty();
    assertThat(CHOICE.withHint("As printed.").withFaults(faults).describedBy())
        .isEqualTo("size-hint size-fault");
  }
}
