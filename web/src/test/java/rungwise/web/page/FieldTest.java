package rungwise.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.quantities.Fault;
import rungwise.web.page.Field.Kind;

class FieldTest {

  @Test
  void what_was_typed_stays_after_a_fault() {
    Faults faults = new Faults(List.of(new Fault("volume", "Write mL.")));

    Field field = Field.of(Kind.AMOUNT, "volume", "Volume").withValue("2 cc").withFaults(faults);

    assertThat(field.shownValue()).isEqualTo("2 cc");
    assertThat(field.fault()).isEqualTo("Write mL.");
  }

  @Test
  void a_secret_is_never_sent_back() {
    assertThat(Field.of(Kind.SECRET, "password", "Password").withValue("typed").shownValue())
        .isEmpty();
  }

  @Test
  void faults_stand_in_the_order_of_the_form_and_those_of_the_whole_form_first() {
    var faults =
        new Faults(List.of(new Fault("b", "B."), Fault.ofForm("All."), new Fault("a", "A.")));

    assertThat(faults.inOrderOf(List.of("a", "b")).all())
        .extracting(Fault::text)
        .containsExactly("All.", "A.", "B.");
  }
}
