package rungwise.clinic.people;

import java.util.concurrent.atomic.AtomicInteger;

/** A hashing that can be read back, and that counts its comparisons. */
final class CountingHashing implements PasswordHashing {

  private final AtomicInteger hashed = new AtomicInteger();
  private final AtomicInteger compared = new AtomicInteger();

  @Override
  public String hash(String secret) {
    return hashed.incrementAndGet() + " " + new StringBuilder(secret).reverse();
  }

  @Override
  public boolean matches(String secret, String hash) {
    compared.incrementAndGet();
    return hash.substring(hash.indexOf(' ') + 1)
        .equals(new StringBuilder(secret).reverse().toString());
  }

  int compared() {
    return compared.get();
  }
}
