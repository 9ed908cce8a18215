package rungwise.clinic.protocols;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;

/** A number past every text is signed only by who ticked it. */
final class ConfirmedNumbersTest {

  private static final String NUMBER = "ceiling: 80 mcg";

  private TitrationWorld world;

  @BeforeEach
  void begin() {
    world = new TitrationWorld(InMemoryRecord.ports(), new LabelReader());
  }

  private List<String> sign(String... ticked) {
    return world.written().signWritten(Staff.LEAD, LabelReader.HIGHER, Set.of(ticked)).faults();
  }

  @Test
  void without_its_tick_the_signature_is_refused_with_number_and_source() {
    assertThat(sign()).singleElement().asString().contains(NUMBER, "for a test");
    assertThat(sign("ceiling: 70 mcg")).hasSize(1);
    assertThat(world.written().find("higher", 1)).isEmpty();
  }

  @Test
  void with_it_the_protocol_is_signed_and_what_was_confirmed_is_on_record() {
    assertThat(sign(NUMBER, "something else")).isEmpty();

    SignedProtocol signed = world.written().find("higher", 1).orElseThrow();
    assertThat(signed.confirmed()).containsExactly(NUMBER);
    assertThat(signed.isWaiting()).isFalse();
  }

  @Test
  void one_that_was_signed_before_it_was_asked_waits() {
    world
        .stored()
        .run(
            () ->
                world
                    .stored()
                    .shelf()
                    .append(
                        new ProtocolShelf.Signed(
                            "higher",
                            1,
                            LabelReader.HIGHER,
                            List.of(),
                            Staff.LEAD.id(),
                            world.now())));

    assertThat(world.written().find("higher", 1).orElseThrow().waits())
        .singleElement()
        .asString()
        .contains(NUMBER);
  }
}
