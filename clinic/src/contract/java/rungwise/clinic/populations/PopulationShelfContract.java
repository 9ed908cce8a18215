package rungwise.clinic.populations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.populations.PopulationShelf.Kept;
import rungwise.clinic.populations.PopulationShelf.Signed;
import rungwise.clinic.populations.PopulationShelf.Withdrawn;
import rungwise.dosing.known.PreparationId;

/** What every adapter of {@link PopulationShelf} keeps to. */
public abstract class PopulationShelfContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");
  private static final AccountId BY = AccountId.of(new UUID(1, 1));
  private static final Withdrawn WHY = new Withdrawn(BY, NOW, "made from too few men");

  private CoursePorts stored;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  @BeforeEach
  void begin() {
    stored = open();
  }

  private static Signed signed(String name, int version) {
    return new Signed(
        name,
        version,
        "{\"about\": \"\u2265 'x'\"}\n",
        List.of(new PreparationId("b"), new PreparationId("a")),
        BY,
        NOW);
  }

  private void append(Signed signed) {
    stored.run(() -> stored.populations().append(signed));
  }

  private void withdraw(String name, int version) {
    stored.run(() -> stored.populations().withdraw(name, version, WHY));
  }

  private static Kept kept(Signed signed) {
    return new Kept(signed, Optional.empty());
  }

  @Test
  void a_new_store_has_no_signed_population() {
    assertThat(stored.populations().all()).isEmpty();
  }

  @Test
  void they_are_listed_in_the_order_of_signing_as_they_were_signed() {
    append(signed("ours", 2));
    append(signed("another", 1));
    append(signed("ours", 1));

    assertThat(stored.populations().all())
        .containsExactly(
            kept(signed("ours", 2)), kept(signed("another", 1)), kept(signed("ours", 1)));
  }

  @Test
  void one_that_was_withdrawn_stays_and_says_when_and_why() {
    append(signed("ours", 1));
    append(signed("ours", 2));
    withdraw("ours", 1);

    assertThat(stored.populations().all())
        .containsExactly(new Kept(signed("ours", 1), Optional.of(WHY)), kept(signed("ours", 2)));
  }

  @Test
  void a_version_is_signed_and_withdrawn_once() {
    append(signed("ours", 1));
    assertThatThrownBy(() -> append(signed("ours", 1))).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> withdraw("ours", 2)).isInstanceOf(IllegalStateException.class);
    withdraw("ours", 1);
    assertThatThrownBy(() -> withdraw("ours", 1)).isInstanceOf(IllegalStateException.class);

    assertThat(stored.populations().all()).hasSize(1);
  }

  @Test
  void instants_are_kept_to_the_millisecond() {
    append(
        new Signed("ours", 1, "{}", List.of(new PreparationId("a")), BY, NOW.plusNanos(999_999)));

    assertThat(stored.populations().all().getFirst().signed().at()).isEqualTo(NOW);
  }

  @Test
  void what_a_failed_transaction_wrote_or_withdrew_is_as_it_was() {
    append(signed("ours", 1));
    assertThatThrownBy(
            () ->
                stored.run(
                    () -> {
                      stored.populations().append(signed("ours", 2));
                      stored.populations().withdraw("ours", 1, WHY);
                      assertThat(stored.populations().all()).hasSize(2);
                      throw new IllegalArgumentException("on purpose");
                    }))
        .hasMessage("on purpose");

    assertThat(stored.populations().all()).containsExactly(kept(signed("ours", 1)));
    append(signed("ours", 2));
    assertThat(stored.populations().all())
        .containsExactly(kept(signed("ours", 1)), kept(signed("ours", 2)));
  }

  @Test
  void nothing_is_written_outside_a_transaction() {
    assertThatThrownBy(() -> stored.populations().append(signed("ours", 1)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("outside a transaction");
  }
}
