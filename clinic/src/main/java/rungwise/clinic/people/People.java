package rungwise.clinic.people;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import rungwise.clinic.people.AccountEvent.Kind;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use cases about the people who work with the program. Safe for use by many threads. */
public final class People {

  /** How long an invitation can be accepted. */
  public static final Duration CODE_GOOD_FOR = Duration.ofDays(7);

  private static final String NOT_ADMINISTRATOR =
      "Only an active administrator can do that: ask one";
  private static final String NO_ACCOUNT = "There is no such account: open the list again";
  private static final Fault NO_ROLE =
      new Fault(AccountFields.ROLES, "No role was chosen: choose at least one");
  private static final String LAST_ADMINISTRATOR =
      "This is the last active administrator: make somebody else one first";
  private static final String IS_DEACTIVATED =
      "The account is deactivated: give it a new code first";

  private final Accounts accounts;
  private final PeoplePorts ports;
  private final SigningIn signingIn;

  public People(PeoplePorts ports) {
    this(ports, Set.of());
  }

  private People(PeoplePorts ports, Set<String> clinic) {
    this.accounts = ports.accounts();
    this.ports = ports;
    this.signingIn = new SigningIn(ports, clinic);
  }

  /** The same in a clinic of a name, which is no password. */
  public People in(String clinic) {
    return new People(ports, Set.of(clinic));
  }

  /**
   * The code with which the first administrator makes his or her account, to be printed once on the
   * terminal; empty as soon as there is an account. Each call replaces the code of the one before.
   */
  public Optional<OneTimeCode> firstStart() {
    if (!accounts.all().isEmpty()) {
      return Optional.empty();
    }
    OneTimeCode code = ports.codes().next();
    String hash = ports.hashing().hash(code.text());
    return ports
        .transactions()
        .inTransaction(
            () -> {
              if (!accounts.all().isEmpty()) {
                return Optional.empty();
              }
              putCode(AccountId.PROGRAM, hash, Optional.empty());
              return Optional.of(code);
            });
  }

  /** Makes an account that its owner opens with the code; the actor must be an administrator. */
  public Reading<Invitation> invite(
      AccountId actor, String signInName, String fullName, Set<Role> roles) {
    Reading<SignInName> name = SignInName.parse(signInName).at(AccountFields.SIGN_IN_NAME);
    Reading<String> full = FullName.parse(fullName).at(AccountFields.FULL_NAME);
    var faults = new ArrayList<>(full.placed());
    faults.addAll(name.placed());
    if (roles.isEmpty()) {
      faults.add(NO_ROLE);
    }
    OneTimeCode code = ports.codes().next();
    String hash = ports.hashing().hash(code.text());
    return asAdministrator(
        actor,
        now -> {
          name.found()
              .flatMap(accounts::named)
              .ifPresent(other -> faults.add(isTaken(other.signInName())));
          if (!faults.isEmpty()) {
            return new Reading.Refused<>(faults);
          }
          var account =
              new Account(
                  AccountId.of(ports.ids().next()),
                  name.orThrow(),
                  full.orThrow(),
                  roles,
                  AccountState.INVITED);
          return Reading.of(give(Kind.ACCOUNT_INVITED, account, code, hash, actor, now));
        });
  }

  /**
   * Gives an account a new code, with which its owner sets a new password. The old one is no more
   * from now on, and whoever asks ends what was opened with it; a deactivated account is invited
   * again.
   */
  public Reading<Invitation> newCode(AccountId actor, AccountId of) {
    OneTimeCode code = ports.codes().next();
    String hash = ports.hashing().hash(code.text());
    return asAdministrator(
        actor,
        now -> {
          Optional<Account> found = accounts.find(of);
          if (found.isEmpty()) {
            return Reading.refused(NO_ACCOUNT);
          }
          Account account = found.get();
          Account after = account.isActive() ? account : account.withState(AccountState.INVITED);
          ports.credentials().remove(of, Credential.Kind.PASSWORD);
          return Reading.of(give(Kind.NEW_CODE_GIVEN, after, code, hash, actor, now));
        });
  }

  /**
   * Sets the password of the account that a code was made for, and signs nobody in.
   *
   * @param fullName needed for the first administrator, whose account is made here; else ignored
   */
  public Reading<Account> accept(
      String code, String signInName, Optional<String> fullName, String password) {
    return signingIn.accept(code, signInName, fullName, password);
  }

  /**
   * The active account whose name and password these are, or nothing. It does not say what was
   * wrong and takes as long for a name that nobody has.
   */
  public Optional<Account> authenticate(String signInName, String password) {
    return signingIn.authenticate(signInName, password);
  }

  /** Exchanges one's own password, which must be given once more. */
  public Reading<Account> changePassword(AccountId of, String present, String wanted) {
    return signingIn.changePassword(of, present, wanted);
  }

  /**
   * The active account whose sign-in name the clinic's own identity provider has vouched for, or
   * nothing. It makes no account and gives no role.
   */
  public Optional<Account> signInByProvider(String signInName) {
    return signingIn.vouchedFor(signInName);
  }

  public Reading<Account> changeRoles(AccountId actor, AccountId of, Set<Role> roles) {
    if (roles.isEmpty()) {
      return Reading.refused(NO_ROLE);
    }
    return change(actor, of, Kind.ROLES_CHANGED, account -> account.withRoles(roles));
  }

  /** Ends an account: it cannot sign in any more. What it did stays under its name. */
  public Reading<Account> deactivate(AccountId actor, AccountId of) {
    return change(
        actor,
        of,
        Kind.ACCOUNT_DEACTIVATED,
        account -> account.withState(AccountState.DEACTIVATED));
  }

  /** Puts on record that an administrator ends sessions of an account; whoever asks ends them. */
  public Reading<Account> endSessions(AccountId actor, AccountId of) {
    return asAdministrator(
        actor,
        now -> {
          Optional<Account> found = accounts.find(of);
          found.ifPresent(
              account ->
                  accounts.append(new AccountEvent(Kind.SESSIONS_ENDED, account, actor, now)));
          return found.map(Reading::of).orElseGet(() -> Reading.refused(NO_ACCOUNT));
        });
  }

  /** Every account, deactivated ones too, by sign-in name. */
  public List<Account> list() {
    return accounts.all();
  }

  /** The account as it is now; a session asks this at each request. */
  public Optional<Account> find(AccountId id) {
    return accounts.find(id);
  }

  private static Fault isTaken(SignInName name) {
    return new Fault(
        AccountFields.SIGN_IN_NAME, "The sign-in name \"" + name + "\" is taken: choose another");
  }

  private Reading<Account> change(
      AccountId actor, AccountId of, Kind kind, UnaryOperator<Account> how) {
    return asAdministrator(
        actor,
        now -> {
          Optional<Account> found = accounts.find(of);
          if (found.isEmpty()) {
            return Reading.refused(NO_ACCOUNT);
          }
          Account before = found.get();
          if (before.state() == AccountState.DEACTIVATED) {
            return Reading.refused(IS_DEACTIVATED);
          }
          Account after = how.apply(before);
          if (isLastAdministrator(before) && !after.may(Role.ADMINISTRATOR)) {
            return Reading.refused(LAST_ADMINISTRATOR);
          }
          accounts.append(new AccountEvent(kind, after, actor, now));
          if (after.state() == AccountState.DEACTIVATED) {
            ports.credentials().remove(of, Credential.Kind.PASSWORD);
            ports.credentials().remove(of, Credential.Kind.CODE);
          }
          return Reading.of(after);
        });
  }

  private boolean isLastAdministrator(Account account) {
    return account.may(Role.ADMINISTRATOR)
        && accounts.all().stream().filter(other -> other.may(Role.ADMINISTRATOR)).count() == 1;
  }

  private Invitation give(
      Kind kind, Account account, OneTimeCode code, String hash, AccountId actor, Instant now) {
    Instant goodUntil = now.plus(CODE_GOOD_FOR);
    accounts.append(new AccountEvent(kind, account, actor, now));
    putCode(account.id(), hash, Optional.of(goodUntil));
    return new Invitation(account, code, goodUntil);
  }

  private void putCode(AccountId holder, String hash, Optional<Instant> goodUntil) {
    ports.credentials().put(new Credential(holder, Credential.Kind.CODE, hash, goodUntil));
  }

  /** Work of an administrator, who is asked for inside the transaction: a session may be stale. */
  private <T> Reading<T> asAdministrator(AccountId actor, Work<T> work) {
    return ports
        .transactions()
        .inTransaction(
            () -> {
              boolean may =
                  accounts.find(actor).filter(by -> by.may(Role.ADMINISTRATOR)).isPresent();
              return may ? work.at(ports.clock().instant()) : Reading.refused(NOT_ADMINISTRATOR);
            });
  }

  /** What is done at an instant. */
  @FunctionalInterface
  private interface Work<T> {
    Reading<T> at(Instant now);
  }
}
