package rungwise.clinic.people;

/** Port: slow, salted hashing of secrets. */
public interface PasswordHashing {

  /** The text to store for a secret; another one each time. */
  String hash(String secret);

  /** Whether a secret is the one of a stored text. Takes as long for a wrong secret. */
  boolean matches(String secret, String hash);
}
