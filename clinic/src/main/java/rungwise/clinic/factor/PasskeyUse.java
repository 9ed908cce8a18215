package rungwise.clinic.factor;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import rungwise.clinic.factor.FactorEvent.Kind;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.SignInAttempt;
import rungwise.quantities.Reading;

/**
 * The use cases about passkeys whose answers were already verified. A passkey asks its holder for a
 * finger, a face or a number of its own, so that it is both proofs at once.
 */
public final class PasskeyUse {

  /** How many one account may have. */
  public static final int MOST = 10;

  private static final String NAME_MISSING =
      "The name of the passkey cannot be used: write 1 to 40 characters on one line, such as desk"
          + " computer";
  private static final String TOO_MANY =
      "There are 10 passkeys already: remove one that is not in use";
  private static final String KNOWN = "This passkey is known already: use another device";

  private final Factors factors;
  private final FactorPorts ports;

  public PasskeyUse(FactorPorts ports) {
    this.factors = ports.factors();
    this.ports = ports;
  }

  public List<Passkey> of(AccountId holder) {
    return factors.passkeys(holder);
  }

  public Optional<Passkey> find(String id) {
    return factors.passkey(id);
  }

  /**
   * Keeps a new one.
   *
   * @param id its own, in base 64 for addresses
   * @param publicPart as it was registered
   */
  public Reading<Passkey> add(
      Account actor, String id, String name, String publicPart, long signCount) {
    String called = name.strip();
    if (!Passkey.isAcceptedName(called)) {
      return Reading.refused(NAME_MISSING);
    }
    return inTransaction(
        () -> {
          if (factors.passkey(id).isPresent()) {
            return Reading.refused(KNOWN);
          }
          if (factors.passkeys(actor.id()).size() >= MOST) {
            return Reading.refused(TOO_MANY);
          }
          var passkey = new Passkey(id, actor.id(), called, publicPart, signCount, now());
          factors.put(passkey);
          factors.append(FactorEvent.own(Kind.PASSKEY_ADDED, actor.id(), now()));
          return Reading.of(passkey);
        });
  }

  /** Forgets one of the actor's own; does nothing if it is not his or hers. */
  public void remove(Account actor, String id) {
    inTransaction(
        () -> {
          Optional<Passkey> own = own(actor, id);
          own.ifPresent(
              passkey -> {
                factors.removePasskey(passkey.id());
                factors.append(FactorEvent.own(Kind.PASSKEY_REMOVED, actor.id(), now()));
              });
          return own;
        });
  }

  private Optional<Passkey> own(Account actor, String id) {
    return factors.passkey(id).filter(passkey -> passkey.holder().equals(actor.id()));
  }

  /**
   * Notes that one of the actor's own has answered.
   *
   * @return whether it still is one of his or hers
   */
  public boolean isProvenBy(Account actor, String id, long signCount) {
    return inTransaction(
        () -> {
          Optional<Passkey> own = own(actor, id);
          own.ifPresent(passkey -> factors.put(passkey.usedWith(signCount)));
          Kind kind = own.isPresent() ? Kind.SECOND_FACTOR_GIVEN : Kind.SECOND_FACTOR_REFUSED;
          factors.append(FactorEvent.own(kind, actor.id(), now()));
          return own.isPresent();
        });
  }

  /** The active account whose passkey has answered at sign-in, or nothing. */
  public Optional<Account> signIn(String id, long signCount) {
    return inTransaction(
        () -> {
          Optional<Passkey> found = factors.passkey(id);
          Optional<Account> holder =
              found.flatMap(passkey -> ports.accounts().find(passkey.holder()));
          Optional<Account> signedIn = holder.filter(Account::isActive);
          ports
              .accounts()
              .append(
                  new SignInAttempt(
                      holder.map(Account::id),
                      signedIn.isPresent()
                          ? SignInAttempt.Outcome.SIGNED_IN
                          : SignInAttempt.Outcome.REFUSED,
                      now()));
          if (signedIn.isPresent()) {
            factors.put(found.orElseThrow().usedWith(signCount));
            factors.append(FactorEvent.own(Kind.SECOND_FACTOR_GIVEN, signedIn.get().id(), now()));
          }
          return signedIn;
        });
  }

  private Instant now() {
    return ports.clock().instant();
  }

  private <T> T inTransaction(Supplier<T> work) {
    return ports.transactions().inTransaction(work);
  }
}
