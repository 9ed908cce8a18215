package rungwise.clinic.formulary;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;

/** Preparations and syringes in memory. */
public final class InMemoryFormulary implements Preparations, Syringes {

  private final Map<PreparationId, ClinicPreparation> versions = new LinkedHashMap<>();
  private final Map<PreparationId, Instant> withdrawn = new HashMap<>();
  private final Set<PreparationId> ended = new HashSet<>();
  private final Set<Barrel> barrels = new HashSet<>();

  @Override
  public synchronized List<ClinicPreparation> inUse() {
    return versions.values().stream()
        .filter(version -> !ended.contains(version.id()))
        .sorted(Comparator.comparing(version -> version.preparation().name()))
        .toList();
  }

  @Override
  public synchronized Optional<ClinicPreparation> find(PreparationId id) {
    return Optional.ofNullable(versions.get(id));
  }

  @Override
  public synchronized void append(ClinicPreparation added, AccountId by, Instant at) {
    if (versions.containsKey(added.id())) {
      throw new IllegalStateException("bug: " + added.id() + " is there already");
    }
    added.replaces().ifPresent(this::end);
    versions.put(added.id(), added);
  }

  @Override
  public synchronized void withdraw(PreparationId id, AccountId by, Instant at, String reason) {
    end(id);
    withdrawn.put(id, at);
  }

  @Override
  public synchronized Optional<Instant> withdrawnAt(PreparationId id) {
    return versions.values().stream()
        .filter(later -> later.replaces().equals(Optional.of(id)))
        .findFirst()
        .map(later -> withdrawnAt(later.id()))
        .orElseGet(() -> Optional.ofNullable(withdrawn.get(id)));
  }

  private void end(PreparationId id) {
    if (!versions.containsKey(id) || !ended.add(id)) {
      throw new IllegalStateException("bug: " + id + " is not in use");
    }
  }

  @Override
  public synchronized List<Barrel> kept() {
    return Barrels.all().stream().filter(barrels::contains).toList();
  }

  @Override
  public synchronized void append(Barrel barrel, Change change, AccountId by, Instant at) {
    switch (change) {
      case ADDED -> barrels.add(barrel);
      case WITHDRAWN -> barrels.remove(barrel);
    }
  }
}
