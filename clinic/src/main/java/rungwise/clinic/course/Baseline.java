package rungwise.clinic.course;

import java.util.Optional;
import rungwise.dosing.screening.ErectileScore;

/** Where he stands before treatment, beside his group and his age. */
public record Baseline(
    Optional<ErectileScore> score, Ability hands, Ability sight, Injector injector) {

  /** How well his hands or his eyes serve him with a syringe. */
  public enum Ability {
    GOOD("good"),
    LIMITED("limited"),
    NOT_ENOUGH("not enough for a syringe"),
    NOT_KNOWN("not known");

    private final String words;

    Ability(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Who will inject. */
  public enum Injector {
    HIMSELF("he himself"),
    PARTNER("his partner"),
    NOT_KNOWN("not decided");

    private final String words;

    Injector(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Whether somebody else, or a device, is needed for drawing up or injecting. */
  public boolean needsHelp() {
    return injector == Injector.HIMSELF
        && (hands == Ability.NOT_ENOUGH || sight == Ability.NOT_ENOUGH);
  }
}
