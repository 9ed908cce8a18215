package rungwise.clinic.people;

import java.util.Arrays;
import java.util.Locale;

/** How far an account has come. Only an active one can sign in. */
public enum AccountState {
  INVITED("Invited"),
  ACTIVE("Active"),
  DEACTIVATED("Deactivated");

  private final String words;

  AccountState(String words) {
    this.words = words;
  }

  /** The name for screens: "Invited". */
  public String words() {
    return words;
  }

  /** The name for files and forms: "invited". */
  public String token() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The state of a token that the program itself wrote.
   *
   * @throws IllegalArgumentException if there is no such state
   */
  public static AccountState ofToken(String token) {
    return Arrays.stream(values())
        .filter(state -> state.token().equals(token))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("bug: no state \"" + token + "\""));
  }
}
