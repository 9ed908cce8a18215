package rungwise.clinic.people;

import java.util.UUID;

/**
 * The identity of an account, which never changes and is never given twice.
 *
 * @param text a UUID in its lower-case form of 36 characters
 */
public record AccountId(String text) {

  /** The program itself, as the one who did something that no person did. Never an account. */
  public static final AccountId PROGRAM = of(new UUID(0, 0));

  public AccountId {
    if (!UUID.fromString(text).toString().equals(text)) {
      throw new IllegalArgumentException("bug: an account id of " + text);
    }
  }

  public static AccountId of(UUID id) {
    return new AccountId(id.toString());
  }

  @Override
  public String toString() {
    return text;
  }
}
