package rungwise.clinic.formulary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** What every adapter of {@link Preparations} and {@link Syringes} keeps to. */
public abstract class FormularyContract {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00Z");
  private static final AccountId BY = AccountId.PROGRAM;

  protected abstract Preparations preparations();

  protected abstract Syringes syringes();

  protected abstract Transactions transactions();

  private static ClinicPreparation version(String id, String name, Form form, InUseRule inUse) {
    var papaverine =
        new Ingredient(
            Component.PAPAVERINE, Concentration.parse("17.65 mg/mL").orThrow(), Optional.empty());
    var alprostadil =
        new Ingredient(
            Component.ALPROSTADIL,
            Concentration.parse("5.88 mcg/mL").orThrow(),
            Optional.of(Mass.parse("6 mcg").orThrow()));
    var preparation =
        new Preparation(
            new PreparationId(id),
            name,
            form,
            List.of(alprostadil, papaverine),
            Volume.ofMicrolitres(1000),
            Optional.of("benzyl alcohol"));
    return new ClinicPreparation(preparation, inUse, Optional.empty());
  }

  private static ClinicPreparation solution(String id, String name) {
    return version(id, name, new Form.Solution(), new InUseRule.NotStated());
  }

  private static ClinicPreparation replacing(ClinicPreparation earlier, String id, String name) {
    ClinicPreparation later = solution(id, name);
    return new ClinicPreparation(later.preparation(), later.inUse(), Optional.of(earlier.id()));
  }

  private void run(Runnable work) {
    transactions()
        .inTransaction(
            () -> {
              work.run();
              return Optional.empty();
            });
  }

  private void append(ClinicPreparation added) {
    run(() -> preparations().append(added, BY, NOW));
  }

  @Test
  void a_new_store_keeps_nothing() {
    assertThat(preparations().inUse()).isEmpty();
    assertThat(syringes().kept()).isEmpty();
    assertThat(preparations().find(new PreparationId("a"))).isEmpty();
  }

  @Test
  void every_form_and_every_rule_comes_back_as_it_was() {
    var volume = Volume.ofMicrolitres(875);
    List<ClinicPreparation> all =
        List.of(
            version("a", "A", new Form.Solution(), new InUseRule.SingleUse()),
            version(
                "b",
                "B",
                new Form.Powder(volume, TimeSpan.ofHours(24)),
                new InUseRule.DaysAfterOpening(28)),
            version("c", "C", new Form.Prefilled(volume), new InUseRule.NotStated()),
            version("d", "D", new Form.Cartridge(volume), new InUseRule.DaysAfterOpening(1)));

    all.forEach(this::append);

    assertThat(preparations().inUse()).isEqualTo(all);
    for (ClinicPreparation one : all) {
      assertThat(preparations().find(one.id())).contains(one);
    }
  }

  @Test
  void every_sample_comes_back_exactly() {
    for (Preparation sample : SamplePreparations.all()) {
      append(new ClinicPreparation(sample, new InUseRule.NotStated(), Optional.empty()));
    }

    assertThat(preparations().inUse())
        .extracting(ClinicPreparation::preparation)
        .containsExactlyInAnyOrderElementsOf(SamplePreparations.all());
  }

  @Test
  void a_replaced_version_is_in_use_no_more_and_stays_readable() {
    ClinicPreparation first = solution("a", "Mixture");
    ClinicPreparation second = replacing(first, "b", "Mixture");

    append(first);
    append(second);

    assertThat(preparations().inUse()).containsExactly(second);
    assertThat(preparations().find(first.id())).contains(first);
    assertThat(preparations().find(second.id())).contains(second);
  }

  @Test
  void every_version_of_a_withdrawn_preparation_was_taken_out_of_use_then_and_no_other() {
    ClinicPreparation first = solution("a", "Mixture");
    ClinicPreparation second = replacing(first, "b", "Mixture");
    ClinicPreparation other = solution("c", "Another");
    append(first);
    append(second);
    append(other);
    assertThat(preparations().withdrawnAt(first.id())).isEmpty();

    run(() -> preparations().withdraw(second.id(), BY, NOW, "recalled by the pharmacy"));

    assertThat(preparations().withdrawnAt(first.id())).contains(NOW);
    assertThat(preparations().withdrawnAt(second.id())).contains(NOW);
    assertThat(preparations().withdrawnAt(other.id())).isEmpty();
  }

  @Test
  void a_withdrawn_version_is_in_use_no_more_and_stays_readable() {
    ClinicPreparation only = solution("a", "Mixture");
    append(only);

    run(() -> preparations().withdraw(only.id(), BY, NOW, "out of supply"));

    assertThat(preparations().inUse()).isEmpty();
    assertThat(preparations().find(only.id())).contains(only);
  }

  @Test
  void a_version_is_replaced_or_withdrawn_only_while_it_is_in_use() {
    ClinicPreparation first = solution("a", "Mixture");
    ClinicPreparation unknown = solution("x", "Other");
    append(first);
    append(replacing(first, "b", "Mixture"));

    assertThatThrownBy(() -> append(replacing(first, "c", "Mixture")))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> append(replacing(unknown, "c", "Mixture")))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> run(() -> preparations().withdraw(first.id(), BY, NOW, "why")))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> append(first)).isInstanceOf(IllegalStateException.class);
    assertThat(preparations().inUse()).hasSize(1);
  }

  @Test
  void preparations_in_use_are_listed_by_name() {
    append(solution("a", "Zeta"));
    append(solution("b", "Alpha"));

    assertThat(preparations().inUse())
        .extracting(one -> one.preparation().name())
        .containsExactly("Alpha", "Zeta");
  }

  @Test
  void a_syringe_is_kept_until_it_is_withdrawn_and_again_when_it_is_added_again() {
    run(() -> syringes().append(Barrels.U100_1, Syringes.Change.ADDED, BY, NOW));
    run(() -> syringes().append(Barrels.U100_0_3, Syringes.Change.ADDED, BY, NOW));
    assertThat(syringes().kept()).containsExactly(Barrels.U100_0_3, Barrels.U100_1);

    run(() -> syringes().append(Barrels.U100_0_3, Syringes.Change.WITHDRAWN, BY, NOW));
    assertThat(syringes().kept()).containsExactly(Barrels.U100_1);

    run(() -> syringes().append(Barrels.U100_0_3, Syringes.Change.ADDED, BY, NOW));
    assertThat(syringes().kept()).containsExactly(Barrels.U100_0_3, Barrels.U100_1);
  }
}
