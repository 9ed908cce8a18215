package rungwise.clinic.formulary;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;

/** Port: every version of every preparation. None is changed or removed. */
public interface Preparations {

  /** The versions that may be planned now: neither replaced nor withdrawn; by name. */
  List<ClinicPreparation> inUse();

  /** Any version, replaced and withdrawn ones too. */
  Optional<ClinicPreparation> find(PreparationId id);

  /** When a version, or the one that took its place in the end, was taken out of use. */
  Optional<Instant> withdrawnAt(PreparationId id);

  /**
   * Adds a version; the one that it replaces is in use no more.
   *
   * @throws IllegalStateException if the id is taken, or what it replaces is not in use
   */
  void append(ClinicPreparation added, AccountId by, Instant at);

  /**
   * Takes a version out of use.
   *
   * @throws IllegalStateException if it is not in use
   */
  void withdraw(PreparationId id, AccountId by, Instant at, String reason);
}
