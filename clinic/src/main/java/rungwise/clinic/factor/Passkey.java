package rungwise.clinic.factor;

import java.time.Instant;
import java.util.regex.Pattern;
import rungwise.clinic.people.AccountId;

/**
 * A key that a device or a browser keeps for an account. Only its public half is known here.
 *
 * @param id its own, in base 64 for addresses
 * @param name by which its holder knows it: 1 to 40 characters on one line
 * @param publicPart its public key and kind in base 64 for addresses, as it was registered
 * @param signCount how often it says that it was used; 0 if it does not count
 */
public record Passkey(
    String id, AccountId holder, String name, String publicPart, long signCount, Instant addedAt) {

  private static final Pattern NAME = Pattern.compile("[^\\p{C}\\s][^\\p{C}]{0,39}");

  public Passkey {
    if (!isAcceptedName(name)) {
      throw new IllegalArgumentException("bug: a passkey name that was not read");
    }
  }

  public static boolean isAcceptedName(String name) {
    return NAME.matcher(name).matches();
  }

  Passkey usedWith(long count) {
    return new Passkey(id, holder, name, publicPart, count, addedAt);
  }
}
