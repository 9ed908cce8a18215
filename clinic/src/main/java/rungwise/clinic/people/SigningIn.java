package rungwise.clinic.people;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.people.AccountEvent.Kind;
import rungwise.clinic.people.SignInAttempt.Outcome;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * Proving who one is: by a one-time code once, by the password from then on. Each way computes one
 * hash comparison whether or not there is such an account, so that time tells nothing.
 */
final class SigningIn {

  private static final Fault WRONG_CODE =
      new Fault(
          AccountFields.CODE,
          "The sign-in name and the code do not belong together, or the code was used, replaced or"
              + " is older than 7 days: check both, or ask an administrator for a new code");
  private static final Fault WRONG_PASSWORD =
      new Fault(
          AccountFields.PRESENT_PASSWORD,
          "The present password is not right: enter the one with which you sign in");
  private static final String FULL_NAME_MISSING =
      "The full name is missing: the first administrator writes his or her own";

  private final Accounts accounts;
  private final Credentials credentials;
  private final PeoplePorts ports;
  private final PasswordRule passwordRule;
  private final String hashOfNobody;

  SigningIn(PeoplePorts ports, Set<String> clinic) {
    this.accounts = ports.accounts();
    this.credentials = ports.credentials();
    this.ports = ports;
    this.passwordRule = new PasswordRule(ports.guessed(), clinic);
    this.hashOfNobody = ports.hashing().hash(ports.codes().next().text());
  }

  Optional<Account> authenticate(String signInName, String password) {
    Optional<Account> named = SignInName.parse(signInName).found().flatMap(accounts::named);
    Optional<Credential> stored =
        named.flatMap(account -> credentials.find(account.id(), Credential.Kind.PASSWORD));
    boolean matches = matches(PasswordRule.normal(password), stored);
    return ports
        .transactions()
        .inTransaction(
            () -> {
              Optional<Account> signedIn =
                  named
                      .filter(account -> matches && isUnchanged(stored))
                      .flatMap(account -> accounts.find(account.id()))
                      .filter(Account::isActive);
              accounts.append(
                  new SignInAttempt(
                      named.map(Account::id),
                      signedIn.isPresent() ? Outcome.SIGNED_IN : Outcome.REFUSED,
                      ports.clock().instant()));
              return signedIn;
            });
  }

  Reading<Account> changePassword(AccountId of, String present, String wanted) {
    Optional<Account> holder = accounts.find(of).filter(Account::isActive);
    Optional<Credential> stored = credentials.find(of, Credential.Kind.PASSWORD);
    var faults = new ArrayList<Fault>();
    if (!matches(PasswordRule.normal(present), stored) || holder.isEmpty()) {
      faults.add(WRONG_PASSWORD);
    }
    faults.addAll(
        passwordRule.faults(
            wanted, holder.map(SigningIn::namesOf).orElse(Set.of()), AccountFields.NEW_PASSWORD));
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    String hash = ports.hashing().hash(PasswordRule.normal(wanted));
    return ports
        .transactions()
        .inTransaction(
            () -> {
              if (!isUnchanged(stored)) {
                return Reading.refused(WRONG_PASSWORD);
              }
              Account account = accounts.find(of).orElseThrow();
              accounts.append(
                  new AccountEvent(Kind.PASSWORD_SET, account, of, ports.clock().instant()));
              credentials.put(new Credential(of, Credential.Kind.PASSWORD, hash, Optional.empty()));
              return Reading.of(account);
            });
  }

  private Set<String> namesOf(
      Optional<AccountId> holder, String signInName, Optional<String> fullName) {
    return holder
        .flatMap(accounts::find)
        .map(SigningIn::namesOf)
        .orElseGet(() -> new HashSet<>(List.of(signInName, fullName.orElse(""))));
  }

  private static Set<String> namesOf(Account account) {
    return Set.of(account.signInName().text(), account.fullName());
  }

  Optional<Account> vouchedFor(String signInName) {
    Optional<SignInName> name = SignInName.parse(signInName).found();
    return ports
        .transactions()
        .inTransaction(
            () -> {
              Optional<Account> named = name.flatMap(accounts::named);
              Optional<Account> signedIn = named.filter(Account::isActive);
              accounts.append(
                  new SignInAttempt(
                      named.map(Account::id),
                      signedIn.isPresent() ? Outcome.SIGNED_IN : Outcome.REFUSED,
                      ports.clock().instant()));
              return signedIn;
            });
  }

  Reading<Account> accept(
      String code, String signInName, Optional<String> fullName, String password) {
    boolean isFirst = accounts.all().isEmpty();
    Reading<SignInName> name = SignInName.parse(signInName).at(AccountFields.SIGN_IN_NAME);
    Optional<AccountId> holder =
        isFirst
            ? Optional.of(AccountId.PROGRAM)
            : name.found().flatMap(accounts::named).map(Account::id);
    Optional<Credential> stored = holder.flatMap(this::goodCode);
    var faults = new ArrayList<Fault>();
    if (!matches(OneTimeCode.normal(code), stored)) {
      faults.add(WRONG_CODE);
    }
    if (isFirst) {
      faults.addAll(readFirstName(fullName).placed());
    }
    faults.addAll(name.placed());
    faults.addAll(
        passwordRule.faults(
            password, namesOf(holder, signInName, fullName), AccountFields.PASSWORD));
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    Credential used = stored.orElseThrow();
    String hash = ports.hashing().hash(PasswordRule.normal(password));
    return ports
        .transactions()
        .inTransaction(
            () -> {
              if (!isUnchanged(stored)) {
                return Reading.refused(WRONG_CODE);
              }
              Account account =
                  isFirst
                      ? firstAdministrator(name.orThrow(), readFirstName(fullName).orThrow())
                      : accounts.find(used.holder()).orElseThrow();
              return Reading.of(open(account.withState(AccountState.ACTIVE), used, hash));
            });
  }

  private Optional<Credential> goodCode(AccountId holder) {
    return credentials
        .find(holder, Credential.Kind.CODE)
        .filter(found -> found.isGoodAt(ports.clock().instant()));
  }

  private Account firstAdministrator(SignInName name, String fullName) {
    return new Account(
        AccountId.of(ports.ids().next()),
        name,
        fullName,
        Set.of(Role.ADMINISTRATOR),
        AccountState.ACTIVE);
  }

  private Account open(Account account, Credential used, String hash) {
    Instant now = ports.clock().instant();
    boolean isFirst = used.holder().equals(AccountId.PROGRAM);
    AccountId by = isFirst ? AccountId.PROGRAM : account.id();
    accounts.append(new AccountEvent(Kind.PASSWORD_SET, account, by, now));
    credentials.put(new Credential(account.id(), Credential.Kind.PASSWORD, hash, Optional.empty()));
    credentials.remove(used.holder(), Credential.Kind.CODE);
    return account;
  }

  private static Reading<String> readFirstName(Optional<String> fullName) {
    return fullName
        .map(FullName::parse)
        .orElseGet(() -> Reading.refused(FULL_NAME_MISSING))
        .at(AccountFields.FULL_NAME);
  }

  /** Too long a secret is compared as an empty one, so that nobody can make hashing slow. */
  private boolean matches(String secret, Optional<Credential> stored) {
    boolean isSane = secret.length() <= PasswordRule.LONGEST * 2;
    String hash = stored.map(Credential::hash).orElse(hashOfNobody);
    return ports.hashing().matches(isSane ? secret : "", hash) && isSane && stored.isPresent();
  }

  /** Whether what was compared before the transaction is still what is stored. */
  private boolean isUnchanged(Optional<Credential> compared) {
    return compared
        .map(then -> credentials.find(then.holder(), then.kind()).filter(then::equals).isPresent())
        .orElse(false);
  }
}
