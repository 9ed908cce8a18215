package rungwise.clinic.factor;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import rungwise.clinic.factor.FactorEvent.Kind;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.OneTimeCode;
import rungwise.clinic.people.Role;
import rungwise.quantities.Reading;

/** The use cases about codes of an authenticator app and recovery codes. Safe for many threads. */
public final class SecondFactors {

  /** How many recovery codes are made at once. */
  public static final int RECOVERY_CODES = 8;

  private static final int LONGEST_REASON = 500;
  private static final String WRONG_CODE =
      "The code does not belong to this secret: wait for the next code of the app and enter its 6"
          + " digits. If that fails again, the clock of the device is wrong.";
  private static final String NOT_ADMINISTRATOR =
      "Only an active administrator can do that: ask one";
  private static final String NO_ACCOUNT = "There is no such account: open the list again";
  private static final String NO_REASON =
      "The reason is missing: write what happened to the device, and how you know who asked, in 1"
          + " to 500 characters";
  private static final String NOTHING_SET_UP =
      "There is nothing to reset: this account has no second factor";

  private final Factors factors;
  private final FactorPorts ports;

  public SecondFactors(FactorPorts ports) {
    this.factors = ports.factors();
    this.ports = ports;
  }

  public FactorStanding standing(AccountId of) {
    return new FactorStanding(
        factors.timeSecret(of).isPresent(), factors.recoveryCodes(of).size(), factors.passkeys(of));
  }

  /** A secret that nobody has yet, to be shown and then set up with a code that proves it. */
  public FactorSecret newSecret() {
    return ports.secrets().get();
  }

  /**
   * Puts a secret in use once a code of it was given, instead of an earlier one.
   *
   * @return the recovery codes, to be shown once; earlier ones no longer work
   */
  public Reading<List<OneTimeCode>> setUp(Account actor, FactorSecret secret, String typed) {
    List<OneTimeCode> codes = newCodes();
    List<String> hashes = hashes(codes);
    return inTransaction(
        () -> {
          Instant now = now();
          Optional<Long> step = acceptedStep(secret, typed, now, Long.MIN_VALUE);
          if (step.isEmpty()) {
            return Reading.refused(WRONG_CODE);
          }
          factors.put(new TimeSecret(actor.id(), secret, step.get()));
          factors.append(FactorEvent.own(Kind.AUTHENTICATOR_SET_UP, actor.id(), now));
          keep(actor, hashes, now);
          return Reading.of(codes);
        });
  }

  /** Makes new recovery codes, to be shown once; earlier ones no longer work. */
  public List<OneTimeCode> newRecoveryCodes(Account actor) {
    List<OneTimeCode> codes = newCodes();
    List<String> hashes = hashes(codes);
    return inTransaction(
        () -> {
          keep(actor, hashes, now());
          return codes;
        });
  }

  private List<OneTimeCode> newCodes() {
    return Stream.generate(ports.codes()::next).limit(RECOVERY_CODES).toList();
  }

  private List<String> hashes(List<OneTimeCode> codes) {
    return codes.stream().map(OneTimeCode::text).map(ports.hashing()::hash).toList();
  }

  private void keep(Account actor, List<String> hashes, Instant now) {
    factors.putRecoveryCodes(actor.id(), hashes);
    factors.append(FactorEvent.own(Kind.RECOVERY_CODES_MADE, actor.id(), now));
  }

  /** Whether what was typed is a code of the app, or a recovery code, that was not used before. */
  public boolean isProvenBy(Account actor, String typed) {
    Optional<String> recovery = matchingRecoveryCode(actor, typed);
    return inTransaction(
        () -> {
          boolean isProven =
              recovery.isPresent() ? useRecovery(actor, recovery.get()) : useTime(actor, typed);
          Kind kind = isProven ? Kind.SECOND_FACTOR_GIVEN : Kind.SECOND_FACTOR_REFUSED;
          factors.append(FactorEvent.own(kind, actor.id(), now()));
          return isProven;
        });
  }

  /** Slow, as every comparison with a hash is, and so done outside of the transaction. */
  private Optional<String> matchingRecoveryCode(Account actor, String typed) {
    String code = OneTimeCode.normal(typed);
    return code.isEmpty()
        ? Optional.empty()
        : factors.recoveryCodes(actor.id()).stream()
            .filter(hash -> ports.hashing().matches(code, hash))
            .findFirst();
  }

  private boolean useRecovery(Account actor, String hash) {
    List<String> left = factors.recoveryCodes(actor.id());
    if (!left.contains(hash)) {
      return false;
    }
    factors.putRecoveryCodes(actor.id(), left.stream().filter(one -> !one.equals(hash)).toList());
    factors.append(FactorEvent.own(Kind.RECOVERY_CODE_USED, actor.id(), now()));
    return true;
  }

  private boolean useTime(Account actor, String typed) {
    Optional<TimeSecret> stored = factors.timeSecret(actor.id());
    Optional<Long> step =
        stored.flatMap(secret -> acceptedStep(secret.secret(), typed, now(), secret.lastStep()));
    step.ifPresent(at -> factors.put(stored.orElseThrow().usedAt(at)));
    return step.isPresent();
  }

  /** The step of a code, at most one step from now and later than the last that was accepted. */
  private static Optional<Long> acceptedStep(
      FactorSecret secret, String typed, Instant now, long after) {
    String digits = typed.replaceAll("\\s", "");
    long present = TimeCode.stepAt(now);
    return Stream.of(present - 1, present, present + 1)
        .filter(step -> step > after)
        .filter(step -> SameText.is(TimeCode.at(secret, step), digits))
        .findFirst();
  }

  /**
   * Forgets everything an account has set up, because its device is lost. The actor must be an
   * administrator, and says why.
   */
  public Reading<Account> reset(Account actor, AccountId of, String reason) {
    String why = reason.strip();
    if (why.isEmpty() || why.length() > LONGEST_REASON) {
      return Reading.refused(NO_REASON);
    }
    return inTransaction(
        () -> {
          boolean may =
              ports.accounts().find(actor.id()).filter(a -> a.may(Role.ADMINISTRATOR)).isPresent();
          Optional<Account> found = ports.accounts().find(of);
          if (!may || found.isEmpty()) {
            return Reading.refused(may ? NO_ACCOUNT : NOT_ADMINISTRATOR);
          }
          if (!standing(of).isSetUp()) {
            return Reading.refused(NOTHING_SET_UP);
          }
          factors.removeAll(of);
          factors.append(
              new FactorEvent(Kind.SECOND_FACTOR_RESET, of, actor.id(), now(), Optional.of(why)));
          return Reading.of(found.get());
        });
  }

  private Instant now() {
    return ports.clock().instant();
  }

  private <T> T inTransaction(Supplier<T> work) {
    return ports.transactions().inTransaction(work);
  }
}
