package rungwise.clinic.formulary;

import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Role;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * The use cases about what the clinic keeps. Only a prescriber or the programme lead changes it.
 * Safe for use by many threads.
 */
public final class Formulary {

  /** The field of the reason for which a preparation is withdrawn. */
  public static final String REASON = "reason";

  private static final String NOT_ALLOWED =
      "Only a prescriber or the programme lead can change what the clinic keeps: ask one.";
  private static final String NOT_IN_USE =
      "This version of the preparation is not in use any more: open the list again.";
  private static final Fault NO_REASON =
      new Fault(REASON, "The reason is missing: write why it is withdrawn.");
  private static final String NO_SAMPLE = "There is no such sample: open the list again.";
  private static final String WAS_KEPT =
      "This composition was kept here before and is not in use any more: enter it as a preparation"
          + " of its own.";
  private static final String NO_BARREL = "There is no such syringe: choose one from the list.";
  private static final int LONGEST_REASON = 1000;

  private final FormularyPorts ports;
  private final Preparations preparations;
  private final Syringes syringes;

  public Formulary(FormularyPorts ports) {
    this.ports = ports;
    this.preparations = ports.preparations();
    this.syringes = ports.syringes();
  }

  /** The preparations that may be planned now, by name. */
  public List<ClinicPreparation> list() {
    return preparations.inUse();
  }

  /** Any version of any preparation, replaced and withdrawn ones too. */
  public Optional<Preparation> find(PreparationId id) {
    return preparations.find(id).map(ClinicPreparation::preparation);
  }

  /** The first one in use of which a label has that composition. */
  public Optional<Preparation> labelled(String composition) {
    return preparations.inUse().stream()
        .map(ClinicPreparation::preparation)
        .filter(one -> one.composition().equals(composition))
        .findFirst();
  }

  /** What somebody must look at again before a draft is kept; empty if it is faulty anyway. */
  public List<String> noticesOn(PreparationDraft draft) {
    return DraftReading.read(draft, new PreparationId("draft"), Optional.empty()).notices();
  }

  /** Any version of any preparation as the clinic kept it, replaced and withdrawn ones too. */
  public Optional<ClinicPreparation> version(PreparationId id) {
    return preparations.find(id);
  }

  /** Whether a version may be planned now. */
  public boolean isInUse(PreparationId id) {
    return preparations.inUse().stream().anyMatch(one -> one.id().equals(id));
  }

  /** When a preparation was taken out of use, whichever of its versions is asked about. */
  public Optional<Instant> recalledAt(PreparationId id) {
    return preparations.withdrawnAt(id);
  }

  /** A version and every one whose place it took. */
  public Set<PreparationId> withEarlier(PreparationId id) {
    var all = new LinkedHashSet<PreparationId>();
    Optional<PreparationId> next = Optional.of(id);
    while (next.isPresent() && all.add(next.get())) {
      next = next.flatMap(preparations::find).flatMap(ClinicPreparation::replaces);
    }
    return all;
  }

  /** The published compositions that were never kept here. */
  public List<Preparation> samples() {
    return SamplePreparations.all().stream()
        .filter(one -> preparations.find(one.id()).isEmpty())
        .toList();
  }

  /** Adds a preparation that was not kept before. */
  public Reading<ClinicPreparation> add(AccountId actor, PreparationDraft draft) {
    return asKeeper(actor, now -> append(actor, draft, Optional.empty(), now));
  }

  /** Adds a version that takes the place of another; what was ordered of that one stays. */
  public Reading<ClinicPreparation> change(
      AccountId actor, PreparationId of, PreparationDraft draft) {
    return asKeeper(
        actor,
        now ->
            isInUse(of) ? append(actor, draft, Optional.of(of), now) : Reading.refused(NOT_IN_USE));
  }

  /**
   * Adds a published composition as it is, under its own id, if its draft says that it was compared
   * with a label.
   */
  public Reading<ClinicPreparation> addSample(
      AccountId actor, PreparationId sample, SampleDraft draft) {
    Optional<Preparation> found = SamplePreparations.of(sample.value());
    if (found.isEmpty()) {
      return Reading.refused(NO_SAMPLE);
    }
    return switch (draft.inUseRule(found.get())) {
      case Reading.Refused<InUseRule> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<InUseRule> rule -> addSample(actor, sample, rule.value());
    };
  }

  /** Adds a published composition that was compared with a label, as it is, under its own id. */
  public Reading<ClinicPreparation> addSample(
      AccountId actor, PreparationId sample, InUseRule inUse) {
    return asKeeper(
        actor,
        now -> {
          Optional<Preparation> found = SamplePreparations.of(sample.value());
          if (found.isEmpty()) {
            return Reading.refused(NO_SAMPLE);
          }
          if (isInUse(sample)) {
            return Reading.refused(isKept(found.get().name()));
          }
          if (preparations.find(sample).isPresent()) {
            return Reading.refused(WAS_KEPT);
          }
          return keep(actor, new ClinicPreparation(found.get(), inUse, Optional.empty()), now);
        });
  }

  /** Takes a preparation out of use; what was ordered of it stays readable. */
  public Reading<ClinicPreparation> withdraw(AccountId actor, PreparationId id, String reason) {
    return asKeeper(
        actor,
        now -> {
          if (!isInUse(id)) {
            return Reading.refused(NOT_IN_USE);
          }
          String why = reason.strip();
          if (why.isEmpty()) {
            return Reading.refused(NO_REASON);
          }
          if (why.length() > LONGEST_REASON) {
            return Reading.refused(
                new Fault(REASON, "The reason is longer than 1000 characters: shorten it."));
          }
          preparations.withdraw(id, actor, now, why);
          return Reading.of(preparations.find(id).orElseThrow());
        });
  }

  /** The syringes that the clinic keeps. */
  public List<Barrel> syringes() {
    return syringes.kept();
  }

  /** Keeps a type of syringe; does nothing if it is kept already. */
  public Reading<Barrel> addSyringe(AccountId actor, String token) {
    return changeSyringe(actor, token, Syringes.Change.ADDED);
  }

  /** Keeps a type of syringe no longer; does nothing if it is not kept. */
  public Reading<Barrel> withdrawSyringe(AccountId actor, String token) {
    return changeSyringe(actor, token, Syringes.Change.WITHDRAWN);
  }

  private Reading<Barrel> changeSyringe(AccountId actor, String token, Syringes.Change change) {
    return asKeeper(
        actor,
        now -> {
          Optional<Barrel> barrel = Barrels.of(token);
          if (barrel.isEmpty()) {
            return Reading.refused(NO_BARREL);
          }
          boolean isWanted = change == Syringes.Change.ADDED;
          if (syringes.kept().contains(barrel.get()) != isWanted) {
            syringes.append(barrel.get(), change, actor, now);
          }
          return Reading.of(barrel.get());
        });
  }

  private Reading<ClinicPreparation> append(
      AccountId actor, PreparationDraft draft, Optional<PreparationId> replaces, Instant now) {
    var id = new PreparationId(ports.ids().next().toString());
    Reading<ClinicPreparation> reading = DraftReading.read(draft, id, replaces);
    Optional<ClinicPreparation> added = reading.found();
    if (added.isEmpty()) {
      return reading;
    }
    Reading<ClinicPreparation> kept = keep(actor, added.get(), now);
    return kept.faults().isEmpty() ? reading : kept;
  }

  private Reading<ClinicPreparation> keep(AccountId actor, ClinicPreparation added, Instant now) {
    boolean isNameTaken =
        preparations.inUse().stream()
            .filter(other -> !added.replaces().equals(Optional.of(other.id())))
            .anyMatch(other -> isSameName(other, added));
    if (isNameTaken) {
      return Reading.refused(isKept(added.preparation().name()));
    }
    preparations.append(added, actor, now);
    return Reading.of(added);
  }

  private static boolean isSameName(ClinicPreparation one, ClinicPreparation other) {
    return one.preparation().name().equalsIgnoreCase(other.preparation().name());
  }

  private static Fault isKept(String name) {
    return new Fault(
        Preparation.NAME,
        "\"" + name + "\" is kept already: change that one, or choose another name.");
  }

  private <T> Reading<T> asKeeper(AccountId actor, Work<T> work) {
    return ports
        .transactions()
        .inTransaction(
            () ->
                ports.accounts().find(actor).filter(Formulary::isKeeper).isPresent()
                    ? work.at(ports.clock().instant())
                    : Reading.refused(NOT_ALLOWED));
  }

  private static boolean isKeeper(Account account) {
    return account.may(Role.PRESCRIBER) || account.may(Role.PROGRAMME_LEAD);
  }

  /** What is done at an instant. */
  @FunctionalInterface
  private interface Work<T> {
    Reading<T> at(Instant now);
  }
}
