package rungwise.store.words;

import java.util.Locale;

/** The names of fixed choices as the tables hold them: in small letters. */
public final class Tokens {

  private Tokens() {}

  public static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  /**
   * The choice of a token that the program itself wrote.
   *
   * @throws IllegalArgumentException if there is no such choice
   */
  public static <E extends Enum<E>> E read(Class<E> choices, String token) {
    return Enum.valueOf(choices, token.toUpperCase(Locale.ROOT));
  }
}
