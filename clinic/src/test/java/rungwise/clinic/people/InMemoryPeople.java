package rungwise.clinic.people;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;

/** Accounts and credentials in memory, with transactions that undo. */
public final class InMemoryPeople implements Accounts, Credentials, Transactions {

  private record Key(AccountId holder, Credential.Kind kind) {}

  private final Map<AccountId, Account> accounts = new HashMap<>();
  private final Map<Key, Credential> credentials = new HashMap<>();
  private final List<AccountEvent> events = new ArrayList<>();
  private final List<SignInAttempt> attempts = new ArrayList<>();

  @Override
  public synchronized List<Account> all() {
    return accounts.values().stream().sorted(Comparator.comparing(Account::signInName)).toList();
  }

  @Override
  public synchronized Optional<Account> find(AccountId id) {
    return Optional.ofNullable(accounts.get(id));
  }

  @Override
  public synchronized Optional<Account> named(SignInName name) {
    return all().stream().filter(account -> account.signInName().equals(name)).findFirst();
  }

  @Override
  public synchronized void append(AccountEvent event) {
    Account after = event.account();
    boolean isOthers =
        named(after.signInName()).filter(a -> !a.id().equals(after.id())).isPresent();
    boolean isChanged =
        find(after.id()).filter(a -> !a.signInName().equals(after.signInName())).isPresent();
    if (isOthers || isChanged) {
      throw new IllegalStateException("bug: the sign-in name belongs to another account");
    }
    accounts.put(after.id(), after);
    events.add(event);
  }

  @Override
  public synchronized void append(SignInAttempt attempt) {
    attempts.add(attempt);
  }

  @Override
  public synchronized Optional<Credential> find(AccountId holder, Credential.Kind kind) {
    return Optional.ofNullable(credentials.get(new Key(holder, kind)));
  }

  @Override
  public synchronized void put(Credential credential) {
    credentials.put(new Key(credential.holder(), credential.kind()), credential);
  }

  @Override
  public synchronized void remove(AccountId holder, Credential.Kind kind) {
    credentials.remove(new Key(holder, kind));
  }

  public synchronized List<AccountEvent> events() {
    return List.copyOf(events);
  }

  public synchronized List<SignInAttempt> attempts() {
    return List.copyOf(attempts);
  }

  @Override
  public synchronized <T> T inTransaction(Supplier<T> work) {
    var accountsBefore = Map.copyOf(accounts);
    var credentialsBefore = Map.copyOf(credentials);
    int eventsBefore = events.size();
    int attemptsBefore = attempts.size();
    boolean isDone = false;
    try {
      T result = work.get();
      isDone = true;
      return result;
    } finally {
      if (!isDone) {
        replace(accounts, accountsBefore);
        replace(credentials, credentialsBefore);
        events.subList(eventsBefore, events.size()).clear();
        attempts.subList(attemptsBefore, attempts.size()).clear();
      }
    }
  }

  private static <K, V> void replace(Map<K, V> now, Map<K, V> before) {
    now.clear();
    now.putAll(before);
  }
}
