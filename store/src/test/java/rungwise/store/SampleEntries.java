package rungwise.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.clinic.access.TakenAccess;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.factor.FactorEvent;
import rungwise.clinic.formulary.ClinicPreparation;
import rungwise.clinic.formulary.Syringes;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountEvent;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.Role;
import rungwise.clinic.people.SignInAttempt;
import rungwise.clinic.people.SignInName;
import rungwise.clinic.supply.ClinicVial;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.syringe.Barrels;

/** Entries of every kind that accounts make. */
public final class SampleEntries {

  public static final Instant NOW = Instant.parse("2026-03-02T09:00:00.123Z");

  private SampleEntries() {}

  public static Account account(int number, String name) {
    return new Account(
        AccountId.of(new UUID(1, number)),
        new SignInName(name),
        "Name of " + name,
        Set.of(Role.PRESCRIBER, Role.ADMINISTRATOR),
        AccountState.ACTIVE);
  }

  public static void run(SqliteStore store, Runnable work) {
    store
        .transactions()
        .inTransaction(
            () -> {
              work.run();
              return Optional.empty();
            });
  }

  /** Appends 5 entries: two accounts, a change, and two tries at signing in. */
  public static void append(SqliteStore store) {
    Account ana = account(1, "ana.ruiz");
    Account zoe = account(2, "zoe");
    run(store, () -> invite(store, ana));
    run(store, () -> invite(store, zoe));
    run(
        store,
        () ->
            store
                .accounts()
                .append(
                    new AccountEvent(
                        AccountEvent.Kind.ROLES_CHANGED,
                        ana.withRoles(Set.of(Role.AUDITOR)),
                        zoe.id(),
                        NOW)));
    run(store, () -> signIn(store, Optional.of(ana.id()), SignInAttempt.Outcome.SIGNED_IN));
    run(store, () -> signIn(store, Optional.empty(), SignInAttempt.Outcome.REFUSED));
  }

  /** Appends entries about a second factor and about access that was taken. */
  public static void appendAccess(SqliteStore store) {
    AccountId ana = account(1, "ana.ruiz").id();
    run(
        store,
        () -> {
          store
              .factors()
              .append(
                  new FactorEvent(
                      FactorEvent.Kind.SECOND_FACTOR_RESET, ana, ana, NOW, Optional.of("lost")));
          store
              .takenAccesses()
              .append(
                  new TakenAccess(
                      ana,
                      new CourseId(new UUID(2, 1).toString()),
                      "he called",
                      NOW,
                      NOW.plusSeconds(1)));
        });
  }

  /** Appends entries to the fact tables about what the clinic keeps. */
  public static void appendFormulary(SqliteStore store) {
    var sample =
        new ClinicPreparation(
            SamplePreparations.ALPROSTADIL_20, new InUseRule.DaysAfterOpening(1), Optional.empty());
    run(
        store,
        () -> {
          store.preparations().append(sample, AccountId.PROGRAM, NOW);
          store.preparations().withdraw(sample.id(), AccountId.PROGRAM, NOW, "out of supply");
          store.syringes().append(Barrels.U100_1, Syringes.Change.ADDED, AccountId.PROGRAM, NOW);
          var dates =
              new VialDates(
                  Optional.empty(), LocalDate.of(2026, 6, 30), Optional.empty(), Optional.empty());
          var label = new Vial("lot", "alprostadil 20 mcg per mL", dates, "");
          store.clinicVials().add(label, AccountId.PROGRAM, NOW);
          ClinicVial kept = store.clinicVials().kept().getFirst();
          store.clinicVials().amend(kept, AccountId.PROGRAM, NOW, "looked at again");
          store.clinicVials().finish(kept.id(), AccountId.PROGRAM, NOW, "used up");
        });
  }

  public static void invite(SqliteStore store, Account account) {
    store
        .accounts()
        .append(
            new AccountEvent(AccountEvent.Kind.ACCOUNT_INVITED, account, AccountId.PROGRAM, NOW));
  }

  public static void signIn(
      SqliteStore store, Optional<AccountId> account, SignInAttempt.Outcome outcome) {
    store.accounts().append(new SignInAttempt(account, outcome, NOW));
  }
}
