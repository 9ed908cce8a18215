package rungwise.clinic.protocols;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.ProtocolShelf.Signed;

/** What every adapter of {@link ProtocolShelf} keeps to. */
public abstract class ProtocolShelfContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  private static final AccountId BY = AccountId.of(new UUID(1, 1));

  private CoursePorts stored;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    stored = open();
  }

  private static Signed signed(String name, int version) {
    return new Signed(
        name, version, "protocol: \"" + name + "\"\n# \u2265 'x'\n", List.of(), BY, NOW);
  }

  private void append(Signed signed) {
    stored.run(() -> stored.shelf().append(signed));
  }

  @Test
  void a_new_store_has_no_signed_protocol() {
    assertThat(stored.shelf().all()).isEmpty();
    assertThat(stored.shelf().find("label", 1)).isEmpty();
  }

  @Test
  void a_document_is_found_by_name_and_version_as_it_was_signed() {
    append(signed("label", 1));
    append(signed("label", 2));
    append(signed("Label", 1));

    assertThat(stored.shelf().find("label", 1)).contains(signed("label", 1));
    assertThat(stored.shelf().find("label", 2)).contains(signed("label", 2));
    assertThat(stored.shelf().find("Label", 1)).contains(signed("Label", 1));
    assertThat(stored.shelf().find("label", 3)).isEmpty();
  }

  @Test
  void what_was_confirmed_singly_is_kept_in_its_order() {
    var confirmed =
        new Signed("label", 1, "document", List.of("start: 5 mcg", "ceiling: 80 mcg"), BY, NOW);
    append(signed("another", 1));
    append(confirmed);

    assertThat(stored.shelf().find("label", 1)).contains(confirmed);
    assertThat(stored.shelf().all()).containsExactly(signed("another", 1), confirmed);
  }

  @Test
  void documents_are_listed_in_the_order_of_signing() {
    append(signed("label", 2));
    append(signed("another", 1));
    append(signed("label", 1));

    assertThat(stored.shelf().all())
        .containsExactly(signed("label", 2), signed("another", 1), signed("label", 1));
  }

  @Test
  void instants_are_kept_to_the_millisecond() {
    append(new Signed("label", 1, "document", List.of(), BY, NOW.plusNanos(999_999)));

    assertThat(stored.shelf().find("label", 1)).map(Signed::at).contains(NOW);
  }

  @Test
  void a_version_is_signed_once() {
    append(signed("label", 1));
    var again = new Signed("label", 1, "another document", List.of(), BY, NOW);

    assertThatThrownBy(() -> append(again)).isInstanceOf(IllegalStateException.class);

    assertThat(stored.shelf().all()).containsExactly(signed("label", 1));
  }

  @Test
  void what_a_failed_transaction_wrote_is_gone() {
    assertThatThrownBy(
            () ->
                stored.run(
                    () -> {
                      stored.shelf().append(signed("label", 1));
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(stored.shelf().all()).isEmpty();
  }

  @Test
  void nothing_is_appended_outside_a_transaction() {
    assertThatThrownBy(() -> stored.shelf().append(signed("label", 1)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("outside a transaction");
  }
}
