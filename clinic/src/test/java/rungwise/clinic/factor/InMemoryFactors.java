package rungwise.clinic.factor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.people.AccountId;

/** Second factors in memory; a failed transaction undoes nothing here. */
final class InMemoryFactors implements Factors {

  private final Map<AccountId, TimeSecret> secrets = new HashMap<>();
  private final Map<AccountId, List<String>> codes = new HashMap<>();
  private final Map<String, Passkey> passkeys = new HashMap<>();
  private final List<FactorEvent> events = new ArrayList<>();

  List<FactorEvent> events() {
    return List.copyOf(events);
  }

  @Override
  public Optional<TimeSecret> timeSecret(AccountId holder) {
    return Optional.ofNullable(secrets.get(holder));
  }

  @Override
  public void put(TimeSecret secret) {
    secrets.put(secret.holder(), secret);
  }

  @Override
  public List<String> recoveryCodes(AccountId holder) {
    return codes.getOrDefault(holder, List.of());
  }

  @Override
  public void putRecoveryCodes(AccountId holder, List<String> hashes) {
    codes.put(holder, List.copyOf(hashes));
  }

  @Override
  public List<Passkey> passkeys(AccountId holder) {
    return passkeys.values().stream()
        .filter(passkey -> passkey.holder().equals(holder))
        .sorted(Comparator.comparing(Passkey::addedAt).thenComparing(Passkey::id))
        .toList();
  }

  @Override
  public Optional<Passkey> passkey(String id) {
    return Optional.ofNullable(passkeys.get(id));
  }

  @Override
  public void put(Passkey passkey) {
    passkeys.put(passkey.id(), passkey);
  }

  @Override
  public void removePasskey(String id) {
    passkeys.remove(id);
  }

  @Override
  public void removeAll(AccountId holder) {
    secrets.remove(holder);
    codes.remove(holder);
    passkeys.values().removeIf(passkey -> passkey.holder().equals(holder));
  }

  @Override
  public void append(FactorEvent event) {
    events.add(event);
  }
}
