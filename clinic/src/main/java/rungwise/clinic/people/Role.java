package rungwise.clinic.people;

import java.util.Arrays;
import java.util.Locale;

/** What an account may do. One account may have several roles. */
public enum Role {
  PRESCRIBER("Prescriber", "screens, plans and signs ladders and orders"),
  NURSE_EDUCATOR("Nurse educator", "teaches, and takes reports by telephone"),
  ON_CALL_CLINICIAN("On-call clinician", "answers the urgent call"),
  PROGRAMME_LEAD("Programme lead", "signs protocols and populations, watches the safety figures"),
  ADMINISTRATOR("Administrator", "gives accounts, backs up and restores"),
  AUDITOR("Auditor", "reads who saw or changed what");

  private final String words;
  private final String task;

  Role(String words, String task) {
    this.words = words;
    this.task = task;
  }

  /** The name for screens: "Nurse educator". */
  public String words() {
    return words;
  }

  /** What the role does, to stand beside its name: "teaches, and takes reports by telephone". */
  public String task() {
    return task;
  }

  /** The name for files and forms: "nurse_educator". */
  public String token() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The role of a token that the program itself wrote.
   *
   * @throws IllegalArgumentException if there is no such role
   */
  public static Role ofToken(String token) {
    return Arrays.stream(values())
        .filter(role -> role.token().equals(token))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("bug: no role \"" + token + "\""));
  }
}
