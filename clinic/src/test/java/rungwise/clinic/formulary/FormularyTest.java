package rungwise.clinic.formulary;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountEvent;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.InMemoryPeople;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInName;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.syringe.Barrels;

final class FormularyTest {

  private static final Instant NOW = Instant.parse("2026-03-02T09:00:00Z");
  private static final IngredientDraft PAPAVERINE = new IngredientDraft("papaverine", "30", "");
  private static final IngredientDraft ALPROSTADIL = new IngredientDraft("alprostadil", "10", "20");
  private static final IngredientDraft EMPTY_ROW = new IngredientDraft("", " ", "");

  private final InMemoryPeople people = new InMemoryPeople();
  private final InMemoryFormulary kept = new InMemoryFormulary();
  private final AtomicInteger ids = new AtomicInteger();
  private final Formulary formulary =
      new Formulary(
          new FormularyPorts(
              people, kept, kept, () -> new UUID(2, ids.incrementAndGet()), () -> NOW, people));
  private final AccountId prescriber = account(Role.PRESCRIBER, AccountState.ACTIVE);

  private AccountId account(Role role, AccountState state) {
    int number = ids.incrementAndGet();
    var account =
        new Account(
            AccountId.of(new UUID(1, number)),
            new SignInName("person-" + number),
            "Person " + number,
            Set.of(role),
            state);
    people.append(
        new AccountEvent(AccountEvent.Kind.ACCOUNT_INVITED, account, AccountId.PROGRAM, NOW));
    return account.id();
  }

  private static PreparationDraft mixture(String name, IngredientDraft... ingredients) {
    return new PreparationDraft(
        name, "solution", "", "", "", List.of(ingredients), "1", "", "not_stated", "");
  }

  @Test
  void a_mixture_is_kept_with_its_composition() {
    var added = formulary.add(prescriber, mixture("Two-drug", ALPROSTADIL, EMPTY_ROW, PAPAVERINE));

    var preparation = added.orThrow().preparation();
    assertThat(preparation.composition())
        .isEqualTo("papaverine hydrochloride 30 mg, alprostadil 10 mcg per mL");
    assertThat(formulary.list()).containsExactly(added.orThrow());
    assertThat(formulary.find(preparation.id())).contains(preparation);
  }

  @Test
  void a_powder_says_how_it_is_dissolved() {
    var draft =
        new PreparationDraft(
            "Powder", "powder", "0.5", "24", "", List.of(ALPROSTADIL), "1", "", "single_use", "");

    var added = formulary.add(prescriber, draft).orThrow();

    assertThat(added.preparation().form().words())
        .isEqualTo("powder, dissolved in 0.5 mL, to be used within 24 h");
    assertThat(added.inUse()).isEqualTo(new InUseRule.SingleUse());
  }

  @Test
  void every_fault_of_a_draft_is_told_at_once() {
    var draft =
        new PreparationDraft(
            " ",
            "powder",
            "0",
            "1.5",
            "",
            List.of(
                new IngredientDraft("papaverine", "1e3", ".5"),
                new IngredientDraft("sugar", "1", ""),
                new IngredientDraft("", "1", "")),
            "2 cc",
            "two\nlines",
            "days",
            "0");

    var refused = formulary.add(prescriber, draft);

    assertThat(String.join("\n", refused.faults()))
        .contains("name is missing")
        .contains("volume that dissolves it: \"0\"")
        .contains("hours of use once dissolved: \"1.5\"")
        .contains("strength of papaverine")
        .contains("limit of papaverine")
        .contains("\"sugar\" is not a known component")
        .contains("without a component")
        .contains("maximum volume")
        .contains("preservative cannot be used")
        .contains("days after opening: \"0\"");
    assertThat(refused.faults()).hasSize(10);
    assertThat(formulary.list()).isEmpty();
  }

  @Test
  void a_maximum_that_passes_a_limit_is_refused() {
    var refused =
        formulary.add(prescriber, mixture("M", new IngredientDraft("alprostadil", "61", "60")));

    assertThat(refused.faults()).hasSize(1).first().asString().contains("limit of 60 mcg");
  }

  /** A slip of the decimal point: 30/1/10 typed as 300/10/100. */
  @Test
  void strengths_ten_times_the_usual_ones_are_refused_until_each_is_typed_a_second_time() {
    var slipped =
        List.of(
            new IngredientDraft("papaverine", "300", ""),
            new IngredientDraft("phentolamine", "10", ""),
            new IngredientDraft("alprostadil", "100", ""));

    assertThat(
            formulary
                .add(prescriber, mixture("M", slipped.toArray(IngredientDraft[]::new)))
                .faults())
        .hasSize(3)
        .allMatch(fault -> fault.contains("far outside") && fault.contains("a second time"));
    assertThat(formulary.list()).isEmpty();
  }

  @Test
  void the_second_typing_must_say_the_same_and_a_difference_names_both() {
    var other = new IngredientDraft("papaverine", "300", "30", "");
    var same = new IngredientDraft("papaverine", "300", "300", "");

    assertThat(formulary.add(prescriber, mixture("M", other)).faults())
        .singleElement()
        .asString()
        .contains("300 mg/mL", "30 mg/mL");
    assertThat(formulary.add(prescriber, mixture("M", same)).faults()).isEmpty();
  }

  @Test
  void a_usual_strength_is_typed_once() {
    assertThat(formulary.add(prescriber, mixture("M", PAPAVERINE, ALPROSTADIL)).faults()).isEmpty();
  }

  @Test
  void the_form_and_the_use_after_opening_must_be_chosen() {
    var draft = new PreparationDraft("M", "", "", "", "", List.of(PAPAVERINE), "1", "", "", "");

    assertThat(formulary.add(prescriber, draft).faults()).hasSize(2);
  }

  @Test
  void days_after_opening_without_a_preservative_give_a_notice() {
    var without =
        new PreparationDraft(
            "A", "solution", "", "", "", List.of(PAPAVERINE), "1", "", "days", "28");
    var with =
        new PreparationDraft(
            "B", "solution", "", "", "", List.of(PAPAVERINE), "1", "phenol", "days", "28");

    assertThat(formulary.add(prescriber, without).notices())
        .hasSize(1)
        .first()
        .asString()
        .contains("pharmacy's own answer");
    assertThat(formulary.add(prescriber, with).notices()).isEmpty();
  }

  @Test
  void the_days_after_opening_end_at_365() {
    PreparationDraft last =
        new PreparationDraft(
            "A", "solution", "", "", "", List.of(PAPAVERINE), "1", "phenol", "days", "365");
    PreparationDraft beyond =
        new PreparationDraft(
            "B", "solution", "", "", "", List.of(PAPAVERINE), "1", "phenol", "days", "366");

    assertThat(formulary.add(prescriber, last).faults()).isEmpty();
    assertThat(formulary.add(prescriber, beyond).faults()).hasSize(1);
  }

  @Test
  void a_change_is_another_version_and_the_old_one_stays_readable() {
    var first = formulary.add(prescriber, mixture("Mixture", PAPAVERINE)).orThrow();

    var second =
        formulary.change(prescriber, first.id(), mixture("Mixture", ALPROSTADIL)).orThrow();

    assertThat(second.replaces()).contains(first.id());
    assertThat(second.id()).isNotEqualTo(first.id());
    assertThat(formulary.list()).containsExactly(second);
    assertThat(formulary.find(first.id())).contains(first.preparation());
    assertThat(formulary.change(prescriber, first.id(), mixture("M", PAPAVERINE)).faults())
        .hasSize(1);
  }

  @Test
  void two_preparations_in_use_never_share_a_name() {
    var first = formulary.add(prescriber, mixture("Mixture", PAPAVERINE)).orThrow();

    var same = formulary.add(prescriber, mixture("MIXTURE", ALPROSTADIL));
    formulary.withdraw(prescriber, first.id(), "out of supply").orThrow();
    var afterwards = formulary.add(prescriber, mixture("Mixture", ALPROSTADIL));

    assertThat(same.faults()).hasSize(1).first().asString().contains("kept already");
    assertThat(afterwards.faults()).isEmpty();
  }

  @Test
  void a_preparation_is_withdrawn_once_and_with_a_reason() {
    var kept = formulary.add(prescriber, mixture("Mixture", PAPAVERINE)).orThrow();

    assertThat(formulary.withdraw(prescriber, kept.id(), " ").faults()).hasSize(1);
    assertThat(formulary.list()).hasSize(1);
    assertThat(formulary.withdraw(prescriber, kept.id(), "out of supply").faults()).isEmpty();
    assertThat(formulary.list()).isEmpty();
    assertThat(formulary.withdraw(prescriber, kept.id(), "again").faults()).hasSize(1);
  }

  @Test
  void a_sample_is_kept_unchanged_and_once() {
    PreparationId id = SamplePreparations.THREE_DRUG.id();

    var added = formulary.addSample(prescriber, id, new InUseRule.NotStated()).orThrow();

    assertThat(added.preparation()).isEqualTo(SamplePreparations.THREE_DRUG);
    assertThat(formulary.addSample(prescriber, id, new InUseRule.NotStated()).faults()).hasSize(1);
    assertThat(
            formulary
                .addSample(prescriber, new PreparationId("none"), new InUseRule.NotStated())
                .faults())
        .hasSize(1);
  }

  @Test
  void only_an_active_prescriber_or_programme_lead_changes_what_is_kept() {
    Set<Role> may = EnumSet.of(Role.PRESCRIBER, Role.PROGRAMME_LEAD);
    for (Role role : Role.values()) {
      AccountId actor = account(role, AccountState.ACTIVE);
      AccountId gone = account(role, AccountState.DEACTIVATED);

      assertThat(changesBy(actor)).as(role.words()).isEqualTo(may.contains(role) ? 6 : 0);
      assertThat(changesBy(gone)).as(role.words()).isZero();
    }
  }

  /** How many of the six changes that an account may do or may not do were done. */
  private int changesBy(AccountId actor) {
    var target = formulary.add(prescriber, mixture("To be changed", PAPAVERINE)).orThrow();
    var changed = formulary.change(actor, target.id(), mixture("To be changed", ALPROSTADIL));
    PreparationId last = changed.found().map(ClinicPreparation::id).orElse(target.id());
    PreparationId sample =
        SamplePreparations.all().stream()
            .map(Preparation::id)
            .filter(id -> formulary.find(id).isEmpty())
            .findFirst()
            .orElseThrow();
    int done =
        (int)
            List.of(
                    changed.found(),
                    formulary.add(actor, mixture("By " + actor, PAPAVERINE)).found(),
                    formulary.withdraw(actor, last, "why").found(),
                    formulary.addSample(actor, sample, new InUseRule.NotStated()).found(),
                    formulary.addSyringe(actor, "u100-1").found(),
                    formulary.withdrawSyringe(actor, "u100-1").found())
                .stream()
                .filter(Optional::isPresent)
                .count();
    if (done == 0) {
      formulary.withdraw(prescriber, target.id(), "to make room").orThrow();
    }
    return done;
  }

  @Test
  void syringes_are_kept_by_their_token() {
    formulary.addSyringe(prescriber, "u100-0.5").orThrow();
    formulary.addSyringe(prescriber, "u100-0.5").orThrow();
    formulary.addSyringe(prescriber, "u100-1").orThrow();
    formulary.withdrawSyringe(prescriber, "u100-1").orThrow();

    assertThat(formulary.syringes()).containsExactly(Barrels.U100_0_5);
    assertThat(formulary.addSyringe(prescriber, "u100-9").faults()).hasSize(1);
  }
}
